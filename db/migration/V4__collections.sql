-- What owners have, how it is connected, what they measured, tried and did. Private: every row begins with its owner.

-- The lock of its row puts the writers of one collection one after another. The document is the writable body as it was sent.
create table collection (
    owner text not null,
    id text not null check (id ~ '^[a-z0-9]+(-[a-z0-9]+)*$' and length(id) <= 100),
    revision bigint not null check (revision > 0),
    changed_in bigint not null check (changed_in > 0),
    document text not null,
    primary key (owner, id)
);

-- Items, connections and all else that stands in a collection; revision is that of the collection in which it changed last.
create table collection_record (
    owner text not null,
    collection text not null,
    section text not null
        check (section in ('ITEMS', 'CONNECTIONS', 'LAG_READINGS', 'TEST_RESULTS', 'SERVICE_NOTES', 'DUE')),
    id text not null check (id ~ '^[a-z0-9]+(-[a-z0-9]+)*$' and length(id) <= 100),
    revision bigint not null check (revision > 0),
    document text not null,
    primary key (owner, collection, section, id),
    foreign key (owner, collection) references collection (owner, id) on delete cascade
);

-- Which connection holds a port of an item; a whole cable or adapter is held under the empty port. One holder each.
create table collection_port (
    owner text not null,
    collection text not null,
    item text not null,
    port text not null,
    section text not null default 'CONNECTIONS' check (section = 'CONNECTIONS'),
    connection text not null,
    primary key (owner, collection, item, port),
    foreign key (owner, collection, section, connection)
        references collection_record (owner, collection, section, id) on delete cascade
);
