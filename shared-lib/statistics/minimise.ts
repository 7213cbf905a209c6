export interface MinimiseOptions {
  /** First steps along each coordinate; default 5 % of it, or 0.05. */
  steps?: readonly number[];
  /** Relative size of the simplex at which a pass ends. */
  tolerance?: number;
  /** Evaluations of `f`, in all passes together. */
  maxEvaluations?: number;
}

export interface Minimum {
  point: number[];
  value: number;
  evaluations: number;
  /** `false`: the evaluations ran out first. */
  converged: boolean;
}

interface Vertex {
  point: number[];
  value: number;
}

/**
 * A local minimum of `f` without derivatives: simplex search, begun afresh at its own answer until it finds nothing
 * better, then one parabola through each coordinate to settle the last digits. Where `f` is not finite is forbidden ground.
 * @throws RangeError when `f` is not finite at the start.
 * Source: J. A. Nelder, R. Mead, Comput. J. 7 (1965) 308, with the coefficients of F. Gao, L. Han,
 * Comput. Optim. Appl. 51 (2012) 259.
 */
export function minimise(f: (point: readonly number[]) => number, start: readonly number[], options: MinimiseOptions = {}): Minimum {
  const tolerance = options.tolerance ?? 1e-10;
  const budget = options.maxEvaluations ?? 2000 * start.length;
  let evaluations = 0;
  const evaluate = (point: number[]): Vertex => {
    evaluations++;
    const value = f(point);
    return { point, value: Number.isFinite(value) ? value : Infinity };
  };
  let best = evaluate([...start]);
  if (best.value === Infinity) throw new RangeError('The function is not finite at the start of the search.');
  if (start.length === 0) return { ...best, evaluations, converged: true };

  let converged = false;
  let scale = 1;
  while (!converged && evaluations < budget) {
    const steps = best.point.map((x, i) => scale * (options.steps?.[i] ?? (x === 0 ? 0.05 : 0.05 * Math.abs(x))));
    const simplex = [best, ...steps.map((step, i) => evaluate(best.point.map((x, j) => (i === j ? x + step : x))))];
    const found = searchSimplex(simplex, evaluate, tolerance, () => evaluations < budget);
    const gain = best.value - found.value;
    best = found;
    scale = Math.max(scale / 4, 1e-3);
    converged = evaluations < budget && gain <= 1e-13 * Math.abs(best.value) + Number.MIN_VALUE;
  }
  return { ...settle(best, evaluate), evaluations, converged };
}

function searchSimplex(simplex: Vertex[], evaluate: (point: number[]) => Vertex, tolerance: number, more: () => boolean): Vertex {
  const n = simplex.length - 1;
  const [expand, contract, shrink] = n === 1 ? [2, 0.5, 0.5] : [1 + 2 / n, 0.75 - 1 / (2 * n), 1 - 1 / n];
  const sort = () => simplex.sort((a, b) => a.value - b.value);
  sort();
  while (more() && sizeOf(simplex) > tolerance) {
    const worst = simplex[n]!;
    const centre = worst.point.map((_, i) => simplex.slice(0, n).reduce((sum, vertex) => sum + vertex.point[i]!, 0) / n);
    const along = (factor: number) => evaluate(centre.map((c, i) => c + factor * (c - worst.point[i]!)));
    const reflected = along(1);
    let next: Vertex | null = reflected;
    if (reflected.value < simplex[0]!.value) {
      const expanded = along(expand);
      if (expanded.value < reflected.value) next = expanded;
    } else if (reflected.value >= simplex[n - 1]!.value) {
      const contracted = along(reflected.value < worst.value ? contract : -contract);
      next = contracted.value < Math.min(reflected.value, worst.value) ? contracted : null;
    }
    if (next) simplex[n] = next;
    else {
      const lead = simplex[0]!.point;
      for (let k = 1; k <= n; k++) simplex[k] = evaluate(simplex[k]!.point.map((x, i) => lead[i]! + shrink * (x - lead[i]!)));
    }
    sort();
  }
  return simplex[0]!;
}

function sizeOf(simplex: Vertex[]): number {
  const lead = simplex[0]!.point;
  let size = 0;
  for (const { point } of simplex) {
    for (let i = 0; i < lead.length; i++) size = Math.max(size, Math.abs(point[i]! - lead[i]!) / Math.max(Math.abs(lead[i]!), 1e-6));
  }
  return size;
}

/** A flat valley hides the last digits from comparisons of values; wide parabolas still see them. */
function settle(best: Vertex, evaluate: (point: number[]) => Vertex): Vertex {
  const point = [...best.point];
  for (let i = 0; i < point.length; i++) {
    const h = 1e-4 * Math.max(Math.abs(point[i]!), 1e-4);
    const at = (shift: number) => evaluate(point.map((x, j) => (i === j ? x + shift : x))).value;
    const [left, right] = [at(-h), at(h)];
    const curvature = left - 2 * best.value + right;
    const shift = (h * (left - right)) / (2 * curvature);
    if (curvature > 0 && Math.abs(shift) < h) point[i]! += shift;
  }
  const settled = evaluate(point);
  return settled.value <= best.value + 1e-14 * Math.abs(best.value) ? settled : best;
}
