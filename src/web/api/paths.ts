import type { RouteName, Routes, PERSON_HEADER as workshopHeader } from '#workshop';

/** Method and path of every route, held to the workshop's own table by type, so that its schemas stay out of the first download. */
export const paths: { readonly [N in RouteName]: Pick<Routes[N], 'method' | 'path'> } = {
  listPianos: { method: 'GET', path: '/api/pianos' },
  addPiano: { method: 'POST', path: '/api/pianos' },
  getPiano: { method: 'GET', path: '/api/pianos/:id' },
  changePiano: { method: 'PATCH', path: '/api/pianos/:id' },
  openCycle: { method: 'POST', path: '/api/pianos/:id/cycles' },
  addSession: { method: 'POST', path: '/api/pianos/:id/sessions' },
  changeSession: { method: 'PATCH', path: '/api/pianos/:id/sessions/:sid' },
  assignReadings: { method: 'POST', path: '/api/pianos/:id/sessions/:sid/readings' },
  listReadings: { method: 'GET', path: '/api/pianos/:id/readings' },
  readingHistory: { method: 'GET', path: '/api/pianos/:id/history' },
  writeReadings: { method: 'POST', path: '/api/pianos/:id/readings' },
  setIntent: { method: 'PUT', path: '/api/pianos/:id/intents/:cycle' },
  setScale: { method: 'PUT', path: '/api/pianos/:id/scales/:cycle' },
  setAction: { method: 'PUT', path: '/api/pianos/:id/actions/:cycle' },
  setTuning: { method: 'PUT', path: '/api/pianos/:id/tunings/:cycle' },
  addPass: { method: 'POST', path: '/api/pianos/:id/passes' },
  changePass: { method: 'PATCH', path: '/api/pianos/:id/passes/:pid' },
  withdrawPass: { method: 'DELETE', path: '/api/pianos/:id/passes/:pid' },
  listShopPasses: { method: 'GET', path: '/api/pianos/:id/shop-passes' },
  addObservation: { method: 'POST', path: '/api/pianos/:id/observations' },
  changeObservation: { method: 'PATCH', path: '/api/pianos/:id/observations/:oid' },
  withdrawObservation: { method: 'DELETE', path: '/api/pianos/:id/observations/:oid' },
  listEvents: { method: 'GET', path: '/api/pianos/:id/events' },
  undo: { method: 'POST', path: '/api/pianos/:id/undo' },
  audit: { method: 'GET', path: '/api/pianos/:id/audit' },
  addWork: { method: 'POST', path: '/api/pianos/:id/work' },
  changeWork: { method: 'PATCH', path: '/api/pianos/:id/work/:wid' },
  previewImport: { method: 'POST', path: '/api/pianos/:id/import/preview' },
  runImport: { method: 'POST', path: '/api/pianos/:id/import' },
  listPeople: { method: 'GET', path: '/api/people' },
  addPerson: { method: 'POST', path: '/api/people' },
  namePerson: { method: 'PUT', path: '/api/people/:reference' },
  forgetPerson: { method: 'DELETE', path: '/api/people/:reference' },
  addDemo: { method: 'POST', path: '/api/demo' },
  removeDemo: { method: 'DELETE', path: '/api/demo' },
  health: { method: 'GET', path: '/api/health' },
};

/** Header that names the person at the bench, held to the workshop's own by type. */
export const PERSON_HEADER: typeof workshopHeader = 'wrestplank-person';
