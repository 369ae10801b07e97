-- The shared catalogue of gear: what is in it now, and every state it ever had.

-- One row. Its lock puts writers one after another, so that revisions become visible in their order.
create table catalogue_state (
    single boolean primary key default true check (single),
    revision bigint not null check (revision >= 0)
);
insert into catalogue_state (revision) values (0);

-- What the catalogue holds now. The document is the writable body as it was sent, without white space.
create table catalogue_item (
    kind text not null check (kind in ('SOURCE', 'DISPLAY', 'CONVERTER', 'LINK')),
    id text not null check (id ~ '^[a-z0-9]+(-[a-z0-9]+)*$' and length(id) <= 100),
    revision bigint not null check (revision > 0),
    name text not null,
    document text not null,
    price_least numeric,
    price_greatest numeric,
    currency text,
    primary key (kind, id)
);
create index catalogue_item_revision on catalogue_item (revision);

-- What an item can be found by: each format that a connector of it takes or gives, with its line rates in Hz.
create table catalogue_capability (
    kind text not null,
    id text not null,
    connector text not null,
    format text,
    line_rate_least numeric,
    line_rate_greatest numeric,
    foreign key (kind, id) references catalogue_item (kind, id) on delete cascade
);
create index catalogue_capability_item on catalogue_capability (kind, id);
create index catalogue_capability_connector on catalogue_capability (kind, connector);

-- Every state of every item; one without a document is its deletion.
create table catalogue_revision (
    kind text not null,
    id text not null,
    revision bigint not null check (revision > 0),
    document text,
    change text not null check (change in ('CREATED', 'REPLACED', 'PATCHED', 'DELETED', 'RESTORED', 'IMPORTED')),
    changed_at timestamptz not null,
    changed_by text not null,
    primary key (kind, id, revision)
);
create index catalogue_revision_order on catalogue_revision (revision);
