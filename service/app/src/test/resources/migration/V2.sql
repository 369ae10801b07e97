insert into idempotency_key (owner, key, request_sha256, answer, created_at) values
    ('local', 'import-1', 'b94d27b9934d3e08a52e52d7da7dabfac484efe37a5380ee9088f7ace2efcde9', '{"validated":false}', '2026-02-03T04:05:06Z');
