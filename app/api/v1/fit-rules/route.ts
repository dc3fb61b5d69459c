import { thingsRoute } from '@/app/api/things-route';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = thingsRoute('fitRule');
