insert into access_token (id, sha256, owner, name, scopes, created_at, expires_at, revoked_at, last_used_at) values
    ('00000000000000aa', repeat('a', 64), 'mira', 'script', array['READ'], '2026-01-05T10:00:00Z', null, null, null),
    ('00000000000000bb', repeat('b', 64), 'admin', 'first', array['READ', 'WRITE', 'CATALOGUE', 'ADMIN'],
     '2026-01-04T10:00:00Z', '2027-01-04T10:00:00Z', '2026-01-06T10:00:00Z', '2026-01-05T10:00:00Z');
