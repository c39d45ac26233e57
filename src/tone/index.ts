export { TONE_METHOD } from './method.ts';
