import { Id } from '@/lib/schema/common';
import { problem } from './problem';

/** Who makes a change, as its headers say: the device always, the person where one is chosen. */
export function whoOf({
  headers,
}: Request): { deviceId: string; personId: string | null } | Response {
  const device = Id.safeParse(headers.get('fitwright-device'));
  if (!device.success) {
    return problem('who-missing', { errors: [{ at: 'fitwright-device', says: 'not a UUID' }] });
  }
  const person = Id.nullable().safeParse(headers.get('fitwright-person'));
  return person.success
    ? { deviceId: device.data, personId: person.data }
    : problem('who-missing', { errors: [{ at: 'fitwright-person', says: 'not a UUID' }] });
}
