/** Where things stand on every sheet with a table: title, the line for invented people, the quiet line, who agreed the settings, a blank row, header. */
export const titleRow = 0;
export const inventedRow = 1;
export const quietRow = 2;
export const agreedRow = 3;
export const headerRow = 5;
