// Makes the database files a first start copies, so that it takes one second and not ten. Run after the build: it uses what was built.
import { makeTemplate } from '../dist/store/embedded/template.js';

await makeTemplate(undefined, true);
