import type { CurveModel } from './curve-fit.ts';

export interface NamedCurve {
  /** As in the source, parameters b1, b2 … */
  formula: string;
  parameters: number;
  model: CurveModel;
}

const { exp, cos, sin, atan, PI } = Math;

const rise: CurveModel = (x, b) => b[0]! * (1 - exp(-b[1]! * x));
const cubicRatio: CurveModel = (x, b) => (b[0]! + x * (b[1]! + x * (b[2]! + x * b[3]!))) / (1 + x * (b[4]! + x * (b[5]! + x * b[6]!)));
const threeExponentials: CurveModel = (x, b) => b[0]! * exp(-b[1]! * x) + b[2]! * exp(-b[3]! * x) + b[4]! * exp(-b[5]! * x);
const decayRatio: CurveModel = (x, b) => exp(-b[0]! * x) / (b[1]! + b[2]! * x);
const twoPeaks: CurveModel = (x, b) =>
  b[0]! * exp(-b[1]! * x) + b[2]! * exp(-(((x - b[3]!) / b[4]!) ** 2)) + b[5]! * exp(-(((x - b[6]!) / b[7]!) ** 2));

const chwirut: NamedCurve = { formula: 'exp(-b1*x)/(b2+b3*x)', parameters: 3, model: decayRatio };
const lanczos: NamedCurve = { formula: 'b1*exp(-b2*x)+b3*exp(-b4*x)+b5*exp(-b6*x)', parameters: 6, model: threeExponentials };
const gauss: NamedCurve = { formula: 'b1*exp(-b2*x)+b3*exp(-((x-b4)/b5)^2)+b6*exp(-((x-b7)/b8)^2)', parameters: 8, model: twoPeaks };
const cubic: NamedCurve = { formula: '(b1+b2*x+b3*x^2+b4*x^3)/(1+b5*x+b6*x^2+b7*x^3)', parameters: 7, model: cubicRatio };

/**
 * The curves of one variable of the NIST Statistical Reference Datasets (nonlinear regression), under the names of
 * their data sets. Source: NIST StRD, https://www.itl.nist.gov/div898/strd/ (public domain).
 */
export const curveModels: Readonly<Record<string, NamedCurve>> = {
  Misra1a: { formula: 'b1*(1-exp(-b2*x))', parameters: 2, model: rise },
  Misra1b: { formula: 'b1*(1-(1+b2*x/2)^(-2))', parameters: 2, model: (x, b) => b[0]! * (1 - (1 + (b[1]! * x) / 2) ** -2) },
  Misra1c: { formula: 'b1*(1-(1+2*b2*x)^(-1/2))', parameters: 2, model: (x, b) => b[0]! * (1 - (1 + 2 * b[1]! * x) ** -0.5) },
  Misra1d: { formula: 'b1*b2*x/(1+b2*x)', parameters: 2, model: (x, b) => (b[0]! * b[1]! * x) / (1 + b[1]! * x) },
  Chwirut1: chwirut,
  Chwirut2: chwirut,
  Lanczos1: lanczos,
  Lanczos2: lanczos,
  Lanczos3: lanczos,
  Gauss1: gauss,
  Gauss2: gauss,
  Gauss3: gauss,
  DanWood: { formula: 'b1*x^b2', parameters: 2, model: (x, b) => b[0]! * x ** b[1]! },
  Kirby2: { formula: '(b1+b2*x+b3*x^2)/(1+b4*x+b5*x^2)', parameters: 5, model: (x, b) => (b[0]! + x * (b[1]! + x * b[2]!)) / (1 + x * (b[3]! + x * b[4]!)) },
  Hahn1: cubic,
  Thurber: cubic,
  MGH09: { formula: 'b1*(x^2+b2*x)/(x^2+b3*x+b4)', parameters: 4, model: (x, b) => (b[0]! * x * (x + b[1]!)) / (x * (x + b[2]!) + b[3]!) },
  MGH10: { formula: 'b1*exp(b2/(x+b3))', parameters: 3, model: (x, b) => b[0]! * exp(b[1]! / (x + b[2]!)) },
  MGH17: { formula: 'b1+b2*exp(-b4*x)+b3*exp(-b5*x)', parameters: 5, model: (x, b) => b[0]! + b[1]! * exp(-b[3]! * x) + b[2]! * exp(-b[4]! * x) },
  Roszman1: { formula: 'b1-b2*x-arctan(b3/(x-b4))/pi', parameters: 4, model: (x, b) => b[0]! - b[1]! * x - atan(b[2]! / (x - b[3]!)) / PI },
  ENSO: {
    formula: 'b1+b2*cos(2*pi*x/12)+b3*sin(2*pi*x/12)+b5*cos(2*pi*x/b4)+b6*sin(2*pi*x/b4)+b8*cos(2*pi*x/b7)+b9*sin(2*pi*x/b7)',
    parameters: 9,
    model: (x, b) => {
      const wave = (period: number, a: number, c: number) => a * cos((2 * PI * x) / period) + c * sin((2 * PI * x) / period);
      return b[0]! + wave(12, b[1]!, b[2]!) + wave(b[3]!, b[4]!, b[5]!) + wave(b[6]!, b[7]!, b[8]!);
    },
  },
  BoxBOD: { formula: 'b1*(1-exp(-b2*x))', parameters: 2, model: rise },
  Rat42: { formula: 'b1/(1+exp(b2-b3*x))', parameters: 3, model: (x, b) => b[0]! / (1 + exp(b[1]! - b[2]! * x)) },
  Rat43: { formula: 'b1/(1+exp(b2-b3*x))^(1/b4)', parameters: 4, model: (x, b) => b[0]! / (1 + exp(b[1]! - b[2]! * x)) ** (1 / b[3]!) },
  Eckerle4: { formula: '(b1/b2)*exp(-((x-b3)/b2)^2/2)', parameters: 3, model: (x, b) => (b[0]! / b[1]!) * exp(-0.5 * ((x - b[2]!) / b[1]!) ** 2) },
  Bennett5: { formula: 'b1*(b2+x)^(-1/b3)', parameters: 3, model: (x, b) => b[0]! * (b[1]! + x) ** (-1 / b[2]!) },
};
