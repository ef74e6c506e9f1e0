/** Cells of a sheet; rows and columns counted from 0. */
export interface Rectangle {
  readonly top: number;
  readonly left: number;
  readonly rows: number;
  readonly columns: number;
}
