import { serveOrders } from '../ui/thread.ts';
import { tryPlaces } from './places-jobs.ts';

serveOrders(tryPlaces);
