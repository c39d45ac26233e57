import { createContext } from 'react';

/** True among plots wider than their place, which scroll sideways: their values and names then stay in view. */
export const ScrolledPlots = createContext(false);
