import { createRouter, createWebHashHistory, type Router } from 'vue-router';
import { useNotice } from './stores/notice.ts';
import { usePractice } from './stores/practice.ts';

/** The pages. All but the desk are fetched when first opened. */
export function createAppRouter(): Router {
  const router = createRouter({
    history: createWebHashHistory(),
    scrollBehavior: (_to, _from, saved) => saved ?? { top: 0 },
    routes: [
      { path: '/', component: () => import('./pages/DeskPage.vue') },
      { path: '/welcome', component: () => import('./pages/WelcomePage.vue') },
      { path: '/settings', component: () => import('./pages/SettingsPage.vue') },
      { path: '/settings/rules', component: () => import('./pages/RulesPage.vue') },
      { path: '/rules/:ruleId', component: () => import('./pages/RulePage.vue'), props: true },
      { path: '/settings/records', component: () => import('./pages/RecordsPage.vue') },
      { path: '/bin', component: () => import('./pages/BinPage.vue') },
      {
        path: '/owners/:clientId/erase',
        component: () => import('./pages/ErasePage.vue'),
        props: true,
      },
      { path: '/restore', component: () => import('./pages/RestorePage.vue') },
      { path: '/science', component: () => import('./pages/SciencePage.vue') },
      { path: '/dogs/new', component: () => import('./pages/DogFormPage.vue') },
      {
        path: '/dogs/:dogId',
        component: () => import('./pages/DogPage.vue'),
        props: true,
      },
      {
        path: '/dogs/:dogId/edit',
        component: () => import('./pages/DogFormPage.vue'),
        props: true,
      },
      {
        path: '/dogs/:dogId/visits/:visitId',
        component: () => import('./pages/VisitPage.vue'),
        props: true,
      },
      {
        path: '/dogs/:dogId/plan',
        component: () => import('./pages/PlanPage.vue'),
        props: true,
      },
      {
        path: '/dogs/:dogId/heat',
        component: () => import('./pages/HeatPage.vue'),
        props: true,
      },
      {
        path: '/dogs/:dogId/handouts',
        component: () => import('./pages/HandoutsPage.vue'),
        props: true,
      },
      { path: '/:rest(.*)*', component: () => import('./pages/NotFoundPage.vue') },
    ],
  });

  router.beforeEach((to) => {
    const practice = usePractice();
    if (practice.status === null) return true;
    if (to.path === '/restore') return true;
    if (practice.status.trouble !== null) return '/restore';
    if (practice.status.open === null && to.path !== '/welcome') return '/welcome';
    return true;
  });
  router.afterEach(() => useNotice().pageChanged());
  return router;
}
