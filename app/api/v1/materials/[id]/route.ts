import { thingRoute } from '@/app/api/thing-route';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = thingRoute('material');
