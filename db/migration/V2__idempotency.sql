-- What was answered to a request with an idempotency key, so that a repetition gets the same answer and stores nothing twice.
-- Written in the transaction that stores what was asked for.
create table idempotency_key (
    owner text not null,
    key text not null,
    request_sha256 text not null,
    answer text not null,
    created_at timestamptz not null,
    primary key (owner, key)
);
create index idempotency_key_created on idempotency_key (created_at);
