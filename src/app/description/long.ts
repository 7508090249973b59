/** Values in a description that is read in a few milliseconds: some 200 stations. */
const MANY = 1500;

/** Whether a parsed description has so many values that reading it would hold the page up. Looks at no more of them. */
export function isLong(description: unknown): boolean {
  let count = 0;
  const isMore = (value: unknown): boolean => {
    count++;
    if (count > MANY) return true;
    return typeof value === 'object' && value !== null && Object.values(value).some(isMore);
  };
  return isMore(description);
}
