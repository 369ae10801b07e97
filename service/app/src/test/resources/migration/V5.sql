insert into catalogue_import (id, owner, idempotency_key, state, checked, done, total, started_at, heartbeat_at, ended_at, report, problem) values
    ('6f1a6b0e-5d0f-4b7e-9a55-0a4f4f2f7b11', 'local', 'import-1', 'DONE', 2, 2, 2,
     '2026-03-04T05:06:07Z', '2026-03-04T05:06:08Z', '2026-03-04T05:06:08Z', '{"validated":false,"revision":4,"items":2,"changed":2}', null),
    ('0c9fb9e4-8c61-4f0f-8f0d-3f9b5a1f9d22', 'local', null, 'RUNNING', 1, 0, null,
     '2026-03-04T05:07:07Z', '2026-03-04T05:07:08Z', null, null, null);
