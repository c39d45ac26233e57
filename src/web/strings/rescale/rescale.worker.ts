import { serveOrders } from '../../ui/thread.ts';
import { runProblems } from './rescale-jobs.ts';

serveOrders(runProblems);
