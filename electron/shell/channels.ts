/** The two channels between the preload script and the shell. */
export const CALL_CHANNEL = 'laydown:call';
export const EVENT_CHANNEL = 'laydown:event';
