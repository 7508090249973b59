/** How large a drawing is: within its margin. */
const scale = (drawnAt: number): string =>
  drawnAt > 1 ? `drawn at ${drawnAt}:1` : `drawn at 1:${Math.round(1 / drawnAt)}`;

/** What every drawing of a part may have. */
export const drawingText = {
  scale: (drawnAt: number): string => (drawnAt === 1 ? 'drawn full size' : scale(drawnAt)),
  /** What a drawing shows, for those who cannot see it. */
  describedAt: ({ description, drawnAt }: { readonly description: string; readonly drawnAt: number }): string => {
    if (drawnAt === 1) return `${description} Drawn full size.`;
    return drawnAt > 1
      ? `${description} Drawn at ${drawnAt}:1.`
      : `${description} Drawn at 1:${Math.round(1 / drawnAt)}.`;
  },
  notToScale: 'not to scale',
  measured: 'as measured',
};
