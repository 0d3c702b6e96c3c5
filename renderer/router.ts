import { createRouter, createWebHashHistory, type RouteRecordRaw, type Router } from 'vue-router';
import { useNotice } from './stores/notice.ts';
import { usePractice } from './stores/practice.ts';

const DOG_PAGES: readonly RouteRecordRaw[] = [
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
    path: '/dogs/:dogId/visits/:visitId/amend',
    component: () => import('./pages/VisitPage.vue'),
    props: ({ params }) => ({ ...params, amends: true }),
  },
  {
    path: '/dogs/:dogId/visits/:visitId/beside/:besideId',
    component: () => import('./pages/TwoVisitsPage.vue'),
    props: true,
  },
  {
    path: '/dogs/:dogId/plan',
    component: () => import('./pages/PlanPage.vue'),
    props: true,
  },
  {
    path: '/dogs/:dogId/charts',
    component: () => import('./pages/ChartsPage.vue'),
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
];

/** The pages. All but the desk are fetched when first opened. */
export function createAppRouter(): Router {
  const router = createRouter({
    history: createWebHashHistory(),
    scrollBehavior: ({ hash }, _from, saved) =>
      saved ?? (hash === '' ? { top: 0 } : { el: hash, top: 96 }),
    routes: [
      { path: '/', component: () => import('./pages/DeskPage.vue') },
      { path: '/welcome', component: () => import('./pages/WelcomePage.vue') },
      { path: '/settings', component: () => import('./pages/SettingsPage.vue') },
      { path: '/settings/rules', component: () => import('./pages/RulesPage.vue') },
      { path: '/rules/:ruleId', component: () => import('./pages/RulePage.vue'), props: true },
      { path: '/settings/records', component: () => import('./pages/RecordsPage.vue') },
      { path: '/settings/records/import', component: () => import('./pages/ImportPage.vue') },
      { path: '/settings/records/bundle', component: () => import('./pages/BundlePage.vue') },
      { path: '/bin', component: () => import('./pages/BinPage.vue') },
      {
        path: '/owners/:clientId/erase',
        component: () => import('./pages/ErasePage.vue'),
        props: true,
      },
      { path: '/restore', component: () => import('./pages/RestorePage.vue') },
      { path: '/year', component: () => import('./pages/YearPage.vue') },
      { path: '/science', component: () => import('./pages/SciencePage.vue') },
      { path: '/dogs/new', component: () => import('./pages/DogFormPage.vue') },
      ...DOG_PAGES,
      { path: '/:rest(.*)*', component: () => import('./pages/NotFoundPage.vue') },
    ],
  });

  router.beforeEach((to) => elsewhere(to.path) ?? true);
  router.afterEach(() => useNotice().pageChanged());
  return router;
}

/** Where a page is not to be had, the one that is in its place. */
function elsewhere(path: string): string | null {
  const { status } = usePractice();
  if (status === null || path === '/restore') return null;
  if (status.trouble !== null) return '/restore';
  return status.open === null && path !== '/welcome' ? '/welcome' : null;
}
