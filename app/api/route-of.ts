import { address, type Handler, type Method } from '@/lib/http/address';
import { troubleOf } from '@/lib/store/trouble-of';

/**
 * What a route file exports: the handlers of one address, with the guards and the last catch all have.
 *
 * @example
 * export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = routeOf({ GET: hello });
 */
export function routeOf(handlers: Partial<Record<Method, Handler>>) {
  return address(handlers, troubleOf);
}
