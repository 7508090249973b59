export const cautionsSheetWords = {
  title: 'Cautions',
  first: 'Read these before you begin, and hang them where the set is used.',
  bench: 'In the workshop and at the bench',
  description: 'Cautions for what this set contains.',
};
