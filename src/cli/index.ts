export { programOf, runProgram } from './program.ts';
