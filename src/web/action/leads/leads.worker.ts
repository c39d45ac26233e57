import { serveOrders } from '../../ui/thread.ts';
import { solveJobs } from './leads-jobs.ts';

serveOrders(solveJobs);
