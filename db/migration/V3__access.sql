-- Who may call. A token itself is told once and not kept: only its SHA-256 is. Its id is the part of it that is public.
create table access_token (
    id text primary key check (id ~ '^[0-9a-f]{16}$'),
    sha256 text not null check (sha256 ~ '^[0-9a-f]{64}$'),
    owner text not null check (owner ~ '^[a-z0-9]+(-[a-z0-9]+)*$' and length(owner) <= 100),
    name text not null check (length(name) between 1 and 200),
    scopes text[] not null check (
        cardinality(scopes) > 0 and scopes <@ array['READ', 'WRITE', 'CATALOGUE', 'ADMIN']
    ),
    created_at timestamptz not null,
    expires_at timestamptz check (expires_at > created_at),
    revoked_at timestamptz,
    last_used_at timestamptz
);
create index access_token_owner on access_token (owner);
