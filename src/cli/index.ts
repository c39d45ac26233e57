export { commandNames, helpOf, programOf, runProgram } from './program.ts';
export { writtenReference } from './reference.ts';
