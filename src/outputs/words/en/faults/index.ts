export { answerHelp, answersText, answerText, checkName, checkText, ohmPlaceText } from './checks.ts';
export { faultText } from './faults.ts';
export { faultCautionTexts, remedyTexts } from './remedies.ts';
export { faultAnswer } from './report.ts';
export { faultTouchWords } from './touch.ts';
