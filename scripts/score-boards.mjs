// Prints what can be misread on the board sheets of the examples and of 500 sets by chance, or
// as many as the argument says; test/sheets/board-score.test.ts holds the limits.
import { bundled } from './support/bundled.mjs';
import { nodeIsNewEnough } from './support/node-version.mjs';

if (nodeIsNewEnough()) {
  const { printBoardScores } = await bundled('test/support/board-report.ts', 'score-boards');
  printBoardScores(Number(process.argv[2] ?? 500));
}
