-- How far imports are, so that every instance can tell; rows go a day after an import ended.
-- DONE is set in the transaction that imports. Whoever ends an import that runs sets another state, and that transaction fails.
create table catalogue_import (
    id text primary key,
    owner text not null,
    idempotency_key text,
    state text not null check (state in ('RUNNING', 'DONE', 'FAILED', 'CANCELLED', 'LOST')),
    checked integer not null default 0 check (checked >= 0),
    done integer not null default 0 check (done >= 0),
    total integer check (total >= 0),
    started_at timestamptz not null,
    heartbeat_at timestamptz not null,
    ended_at timestamptz,
    report text,
    problem text,
    check ((ended_at is null) = (state = 'RUNNING')),
    check ((report is not null) = (state = 'DONE')),
    check ((problem is not null) = (state = 'FAILED'))
);

-- Of two imports with the same key one runs.
create unique index catalogue_import_running on catalogue_import (owner, idempotency_key) where state = 'RUNNING';
create index catalogue_import_ended on catalogue_import (ended_at);
