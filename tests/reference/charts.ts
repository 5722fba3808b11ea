/**
 * Printed compound charts, board flat on the saw table. Rows: slope of the side from horizontal; columns: equal
 * sides 4 to 10; miter / bevel. Craftsman 315.21212 manual p. 24 (n = 4 to 10) and Ryobi TSS121 manual p. 32
 * (n = 4 to 6), as read in check-values section 1; stated resolution 0.005 degrees.
 */
export const CHART = `
 5 44.89/3.53 35.90/2.94 29.91/2.50 25.63/2.17 22.42/1.91 19.93/1.71 17.94/1.54
10 44.56/7.05 35.58/5.86 29.62/4.98 25.37/4.32 22.19/3.81 19.72/3.40 17.74/3.08
15 44.01/10.55 35.06/8.75 29.15/7.44 24.95/6.45 21.81/5.68 19.37/5.08 17.42/4.59
20 43.22/14.00 34.32/11.60 28.48/9.85 24.35/8.53 21.27/7.52 18.88/6.72 16.98/6.07
25 42.19/17.39 33.36/14.38 27.62/12.20 23.56/10.57 20.58/9.31 18.26/8.31 16.41/7.50
30 40.89/20.70 32.18/17.09 26.57/14.48 22.64/12.53 19.73/11.03 17.50/9.85 15.72/8.89
35 39.32/23.93 30.76/19.70 25.31/16.67 21.53/14.41 18.74/12.68 16.60/11.31 14.90/10.21
40 37.45/27.03 29.10/22.20 23.86/18.75 20.25/16.19 17.60/14.24 15.58/12.70 13.98/11.46
45 35.26/30.00 27.19/24.56 22.21/20.70 18.80/17.87 16.32/15.70 14.43/14.00 12.94/12.62
50 32.73/32.80 25.03/26.76 20.36/22.52 17.20/19.41 14.91/17.05 13.17/15.19 11.80/13.69
55 29.84/35.40 22.62/28.78 18.32/24.18
60 26.57/37.76 19.96/30.60 16.10/25.66
65 22.91/39.86 17.07/32.19 13.71/26.95
70 18.88/41.64 13.95/33.53 11.17/28.02`;

/** Computed table of check-values section 1: inside corner, then springs 38, 45 and 52. */
export const CORNERS = `
60 46.84/43.03 50.77/37.76 53.77/32.22
67 42.93/41.08 46.89/36.13 49.97/30.89
72 40.28/39.61 44.22/34.89 47.32/29.87
80 36.27/37.13 40.12/32.80 43.20/28.14
85 33.90/35.52 37.66/31.42 40.69/27.00
88 32.52/34.53 36.21/30.57 39.21/26.29
90 31.62/33.86 35.26/30.00 38.24/25.81
92 30.73/33.19 34.33/29.42 37.27/25.32
95 29.43/32.17 32.94/28.54 35.83/24.58
108 24.10/27.59 27.19/24.56 29.79/21.22
120 19.57/23.20 22.21/20.70 24.46/17.93
135 14.31/17.55 16.32/15.70 18.08/13.63
144 11.31/14.09 12.94/12.62 14.36/10.97
150 9.37/11.77 10.73/10.55 11.92/9.17
157.5 6.98/8.84 8.01/7.93 8.91/6.90
165 4.63/5.90 5.32/5.30 5.92/4.61
170 3.08/3.94 3.54/3.53 3.94/3.08
179 0.31/0.39 0.35/0.35 0.39/0.31`;

/** Springs of the columns above. */
export const SPRINGS = [38, 45, 52] as const;

/** Printed 23.56 where the formula gives 23.58: the one number of the chart that is off. */
export const MISPRINT = 'slope 25, 7 sides, miter';

export interface ChartRow {
  readonly head: number;
  readonly cells: readonly { readonly miter: number; readonly bevel: number }[];
}

/** Lines of a chart, each with its head and its cells. */
export const rowsOf = (table: string): ChartRow[] =>
  table
    .trim()
    .split('\n')
    .map((line) => {
      const [head, ...cells] = line.trim().split(/\s+/);
      return {
        head: Number(head),
        cells: cells.map((cell) => {
          const [miter, bevel] = cell.split('/').map(Number);
          return { miter: miter as number, bevel: bevel as number };
        }),
      };
    });
