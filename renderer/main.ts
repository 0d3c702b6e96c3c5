import './noEval.ts';
import { createPinia } from 'pinia';
import { createApp } from 'vue';
import { createClient, provideClient } from './api/client.ts';
import App from './App.vue';
import { wouldLoseDrafts } from './composables/draftStore.ts';
import { watchLeaving } from './composables/leaving.ts';
import { createAppRouter } from './router.ts';
import { usePractice } from './stores/practice.ts';
import { useTextSize } from './stores/textSize.ts';
import { useTheme } from './stores/theme.ts';
import './styles/fonts.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/controls.css';
import './styles/sheets.css';

// The client comes first: it takes the start code out of the address before the router reads it.
const client = await createClient();
const app = createApp(App);
provideClient(app, client);
app.use(createPinia());
useTheme();
useTextSize();
const practice = usePractice();

// The first page waits for the status, so that the router knows whether to welcome or to work.
if (!client.refused.value) await practice.load();
app.use(createAppRouter());
app.mount('#app');
watchLeaving(() => wouldLoseDrafts(client));
