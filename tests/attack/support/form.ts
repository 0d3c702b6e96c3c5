/** True in `npm run attack`: minutes of a machine instead of seconds. */
export const long = process.env['ATTACK'] === 'long';
