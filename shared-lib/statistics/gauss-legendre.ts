/** Nodes and weights of a quadrature rule. */
export interface Quadrature {
  nodes: Float64Array;
  weights: Float64Array;
}

/**
 * Gauss–Legendre rule with `count` nodes on [−1, 1].
 * Source: Newton's method on the Legendre polynomial, W. H. Press et al., Numerical Recipes, 3rd ed. (2007), 4.6.
 */
function gaussLegendre(count: number): Quadrature {
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 0;
    for (let round = 0; round < 100; round++) {
      let value = 1;
      let before = 0;
      for (let j = 1; j <= count; j++) [value, before] = [((2 * j - 1) * x * value - (j - 1) * before) / j, value];
      slope = (count * (x * value - before)) / (x * x - 1);
      const step = value / slope;
      x -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    nodes[count - 1 - i] = x;
    weights[count - 1 - i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}

const RULE = gaussLegendre(32);

/** ∫ f from `from` to `to` by a rule of 32 nodes on each of `panels` equal parts. */
export function integrate(f: (x: number) => number, from: number, to: number, panels: number): number {
  const half = (to - from) / panels / 2;
  let sum = 0;
  for (let panel = 0; panel < panels; panel++) {
    const middle = from + (2 * panel + 1) * half;
    for (let i = 0; i < RULE.nodes.length; i++) sum += RULE.weights[i]! * f(middle + half * RULE.nodes[i]!);
  }
  return sum * half;
}
