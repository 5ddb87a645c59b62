/** Words that the pages of bringing in and taking out share. */
export const many = (count: number, one: string, more: string): string =>
  `${count.toLocaleString("en-GB")} ${count === 1 ? one : more}`;
