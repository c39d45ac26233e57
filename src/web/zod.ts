import { z } from 'zod/v4';

// The page forbids code made from text (its content policy), which schemas would otherwise try, for speed, as they are defined.
z.config({ jitless: true });

export { z };
