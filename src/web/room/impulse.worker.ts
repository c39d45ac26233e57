import { serveOrders } from '../ui/thread.ts';
import { hearRoom } from './impulse-jobs.ts';

serveOrders(hearRoom);
