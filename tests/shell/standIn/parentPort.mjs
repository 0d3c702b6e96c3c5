// Preloaded into the child that runs the built service: gives it the parent port of a utility process.
import { EventEmitter } from 'node:events';

const port = new EventEmitter();
port.postMessage = (message) => process.send(message);
process.on('message', (data) => port.emit('message', { data, ports: [] }));
process.parentPort = port;
