/** Energy at rest by published equations, kcal a day. Bands of age hold their lower end: 18 belongs to 18 to 30. */

export type Sex = "male" | "female";

/** From this age on: slope in kcal per kg, and constant. */
type Band = readonly [from: number, slope: number, constant: number];
type Bands = Readonly<Record<Sex, readonly Band[]>>;

/** Schofield 1985, weight only, as in FAO/WHO/UNU 2004, table 5.2. */
export const schofield: Bands = {
  male: [
    [0, 59.512, -30.4],
    [3, 22.706, 504.3],
    [10, 17.686, 658.2],
    [18, 15.057, 692.2],
    [30, 11.472, 873.1],
    [60, 11.711, 587.7],
  ],
  female: [
    [0, 58.317, -31.1],
    [3, 20.315, 485.9],
    [10, 13.384, 692.6],
    [18, 14.818, 486.6],
    [30, 8.126, 845.6],
    [60, 9.082, 658.5],
  ],
};

/** Henry 2005 (Oxford), weight only, the set in kcal; its MJ set does not agree for boys of 3 to 10. */
export const henry: Bands = {
  male: [
    [0, 61.0, -33.7],
    [3, 23.3, 514],
    [10, 18.4, 581],
    [18, 16.0, 545],
    [30, 14.2, 593],
    [60, 13.0, 567],
    [70, 13.7, 481],
  ],
  female: [
    [0, 58.9, -23.1],
    [3, 20.1, 507],
    [10, 11.1, 761],
    [18, 13.1, 558],
    [30, 9.74, 694],
    [60, 10.2, 572],
    [70, 10.0, 577],
  ],
};

export function byBands(bands: Bands, sex: Sex, age: number, weight: number): number {
  const [, slope, constant] = bands[sex].filter(([from]) => age >= from).at(-1)!;
  return slope * weight + constant;
}

/** Mifflin-St Jeor 1990, the rounded form; height in cm. Studied from 19 to 78 years. */
export const mifflinStJeor = (sex: Sex, age: number, weight: number, height: number): number =>
  10 * weight + 6.25 * height - 5 * age + (sex === "male" ? 5 : -161);
