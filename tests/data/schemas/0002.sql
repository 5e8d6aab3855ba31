-- Schema 0002 as released, with one invented player. Frozen: later versions are tested by migrating from it.
PRAGMA application_id = 1398033239;
BEGIN TRANSACTION;
CREATE TABLE account (
	id INTEGER NOT NULL, 
	at VARCHAR(24) NOT NULL, 
	who VARCHAR(80) NOT NULL, 
	name VARCHAR(80) NOT NULL, 
	role VARCHAR(20) NOT NULL, 
	password VARCHAR(200) NOT NULL, 
	closed BOOLEAN NOT NULL, 
	CONSTRAINT pk_account PRIMARY KEY (id)
);
CREATE TABLE act (
	id INTEGER NOT NULL, 
	at VARCHAR(24) NOT NULL, 
	who VARCHAR(80) NOT NULL, 
	what VARCHAR(40) NOT NULL, 
	player_id INTEGER, 
	detail TEXT NOT NULL, 
	CONSTRAINT pk_act PRIMARY KEY (id), 
	CONSTRAINT fk_act_player_id FOREIGN KEY(player_id) REFERENCES player (id)
);
INSERT INTO "act" VALUES(1,'2026-03-14T10:00:02.000Z','ot','player added',1,'');
INSERT INTO "act" VALUES(2,'2026-03-14T10:00:05.000Z','ot','visit begun',1,'2026-03-14');
INSERT INTO "act" VALUES(3,'2026-03-14T10:00:07.000Z','ot','consent given',1,'');
CREATE TABLE alembic_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "alembic_version" VALUES('0002');
CREATE TABLE chunk (
	recording_id INTEGER NOT NULL, 
	first BIGINT NOT NULL, 
	samples INTEGER NOT NULL, 
	body BLOB NOT NULL, 
	digest VARCHAR(64) NOT NULL, 
	CONSTRAINT pk_chunk PRIMARY KEY (recording_id, first), 
	CONSTRAINT fk_chunk_recording_id FOREIGN KEY(recording_id) REFERENCES recording (id)
);
CREATE TABLE consent (
	id INTEGER NOT NULL, 
	at VARCHAR(24) NOT NULL, 
	who VARCHAR(80) NOT NULL, 
	player_id INTEGER NOT NULL, 
	given_on VARCHAR(10) NOT NULL, 
	until VARCHAR(10) NOT NULL, 
	given_by VARCHAR(80) NOT NULL, 
	scope JSON NOT NULL, 
	explained TEXT NOT NULL, 
	withdrawn BOOLEAN NOT NULL, 
	CONSTRAINT pk_consent PRIMARY KEY (id), 
	CONSTRAINT fk_consent_player_id FOREIGN KEY(player_id) REFERENCES player (id)
);
INSERT INTO "consent" VALUES(1,'2026-03-14T10:00:08.000Z','ot',1,'2026-03-14','2027-03-14','the player, an adult','["measure", "keep"]','',0);
CREATE TABLE document (
	id INTEGER NOT NULL, 
	visit_id INTEGER, 
	name VARCHAR(200) NOT NULL, 
	CONSTRAINT pk_document PRIMARY KEY (id), 
	CONSTRAINT fk_document_visit_id FOREIGN KEY(visit_id) REFERENCES visit (id), 
	CONSTRAINT uq_document_visit_id_name UNIQUE (visit_id, name)
);
INSERT INTO "document" VALUES(1,1,'player.toml');
CREATE TABLE loan_act (
	id INTEGER NOT NULL, 
	at VARCHAR(24) NOT NULL, 
	who VARCHAR(80) NOT NULL, 
	loan INTEGER NOT NULL, 
	player_id INTEGER NOT NULL, 
	item VARCHAR(200) NOT NULL, 
	what VARCHAR(20) NOT NULL, 
	on_date VARCHAR(10) NOT NULL, 
	note TEXT NOT NULL, 
	CONSTRAINT pk_loan_act PRIMARY KEY (id), 
	CONSTRAINT fk_loan_act_player_id FOREIGN KEY(player_id) REFERENCES player (id)
);
CREATE TABLE "plan" (
	id INTEGER NOT NULL, 
	at VARCHAR(24) NOT NULL, 
	who VARCHAR(80) NOT NULL, 
	visit_id INTEGER NOT NULL, 
	number INTEGER NOT NULL, 
	program VARCHAR(40) NOT NULL, 
	asked JSON NOT NULL, 
	result BLOB NOT NULL, 
	digest VARCHAR(64) NOT NULL, 
	CONSTRAINT pk_plan PRIMARY KEY (id), 
	CONSTRAINT fk_plan_visit_id FOREIGN KEY(visit_id) REFERENCES visit (id), 
	CONSTRAINT uq_plan_visit_id_number UNIQUE (visit_id, number)
);
CREATE TABLE plan_input (
	id INTEGER NOT NULL, 
	plan_id INTEGER NOT NULL, 
	version_id INTEGER, 
	recording_id INTEGER, 
	samples BIGINT, 
	CONSTRAINT pk_plan_input PRIMARY KEY (id), 
	CONSTRAINT fk_plan_input_plan_id FOREIGN KEY(plan_id) REFERENCES "plan" (id), 
	CONSTRAINT fk_plan_input_recording_id FOREIGN KEY(recording_id) REFERENCES recording (id), 
	CONSTRAINT fk_plan_input_version_id FOREIGN KEY(version_id) REFERENCES version (id)
);
CREATE TABLE player (
	id INTEGER NOT NULL, 
	at VARCHAR(24) NOT NULL, 
	who VARCHAR(80) NOT NULL, 
	code VARCHAR(40) NOT NULL, 
	code_key VARCHAR(40) NOT NULL, 
	CONSTRAINT pk_player PRIMARY KEY (id), 
	CONSTRAINT uq_player_code_key UNIQUE (code_key)
);
INSERT INTO "player" VALUES(1,'2026-03-14T10:00:01.000Z','ot','K7','k7');
CREATE TABLE reading (
	id INTEGER NOT NULL, 
	visit_id INTEGER NOT NULL, 
	version_id INTEGER NOT NULL, 
	site VARCHAR(200) NOT NULL, 
	kind VARCHAR(20) NOT NULL, 
	direction_rad FLOAT, 
	repeats JSON NOT NULL, 
	typed TEXT NOT NULL, 
	CONSTRAINT pk_reading PRIMARY KEY (id), 
	CONSTRAINT fk_reading_version_id FOREIGN KEY(version_id) REFERENCES version (id), 
	CONSTRAINT fk_reading_visit_id FOREIGN KEY(visit_id) REFERENCES visit (id)
);
INSERT INTO "reading" VALUES(1,1,2,'chin','force',1.57079632679489655799e+00,'[0.3334261, 0.3530394]','force_gf = 34, 36.0');
CREATE TABLE recording (
	id INTEGER NOT NULL, 
	at VARCHAR(24) NOT NULL, 
	who VARCHAR(80) NOT NULL, 
	visit_id INTEGER NOT NULL, 
	name VARCHAR(200) NOT NULL, 
	site VARCHAR(200) NOT NULL, 
	task VARCHAR(20) NOT NULL, 
	stick VARCHAR(200) NOT NULL, 
	topper VARCHAR(200) NOT NULL, 
	extension VARCHAR(200) NOT NULL, 
	source VARCHAR(20) NOT NULL, 
	device VARCHAR(200) NOT NULL, 
	columns JSON NOT NULL, 
	asked JSON NOT NULL, 
	CONSTRAINT pk_recording PRIMARY KEY (id), 
	CONSTRAINT fk_recording_visit_id FOREIGN KEY(visit_id) REFERENCES visit (id), 
	CONSTRAINT uq_recording_visit_id_name UNIQUE (visit_id, name)
);
CREATE TABLE recording_act (
	id INTEGER NOT NULL, 
	at VARCHAR(24) NOT NULL, 
	who VARCHAR(80) NOT NULL, 
	recording_id INTEGER NOT NULL, 
	what VARCHAR(40) NOT NULL, 
	sample BIGINT NOT NULL, 
	detail TEXT NOT NULL, 
	CONSTRAINT pk_recording_act PRIMARY KEY (id), 
	CONSTRAINT fk_recording_act_recording_id FOREIGN KEY(recording_id) REFERENCES recording (id)
);
CREATE TABLE recording_summary (
	recording_id INTEGER NOT NULL, 
	program VARCHAR(40) NOT NULL, 
	samples BIGINT NOT NULL, 
	told TEXT NOT NULL, 
	CONSTRAINT pk_recording_summary PRIMARY KEY (recording_id), 
	CONSTRAINT fk_recording_summary_recording_id FOREIGN KEY(recording_id) REFERENCES recording (id)
);
CREATE TABLE setting (
	id INTEGER NOT NULL, 
	at VARCHAR(24) NOT NULL, 
	who VARCHAR(80) NOT NULL, 
	name VARCHAR(80) NOT NULL, 
	value JSON NOT NULL, 
	CONSTRAINT pk_setting PRIMARY KEY (id)
);
CREATE TABLE tail (
	recording_id INTEGER NOT NULL, 
	sample BIGINT NOT NULL, 
	body BLOB NOT NULL, 
	CONSTRAINT pk_tail PRIMARY KEY (recording_id, sample), 
	CONSTRAINT fk_tail_recording_id FOREIGN KEY(recording_id) REFERENCES recording (id)
);
CREATE TABLE version (
	id INTEGER NOT NULL, 
	at VARCHAR(24) NOT NULL, 
	who VARCHAR(80) NOT NULL, 
	document_id INTEGER NOT NULL, 
	number INTEGER NOT NULL, 
	body BLOB NOT NULL, 
	digest VARCHAR(64) NOT NULL, 
	why TEXT NOT NULL, 
	removed BOOLEAN NOT NULL, typed BLOB, 
	CONSTRAINT pk_version PRIMARY KEY (id), 
	CONSTRAINT fk_version_document_id FOREIGN KEY(document_id) REFERENCES document (id), 
	CONSTRAINT uq_version_document_id_number UNIQUE (document_id, number)
);
INSERT INTO "version" VALUES(1,'2026-03-14T10:00:04.000Z','ot',1,1,X'789C4BCE4F4955B05550F23657E22ACB2CCE2C01718C0C8CCC740D8C750D4D94B8B8941582334B528B1512F352148A52135332F3D28B1592F373531532528B5215128B154A32522B151281ECD4BC12A0508A1E1700111619D1','86c4b4c52e010d9cdef3afeadba81c98d6a4e6d69d93d84d38b84ee5b3b17414','begun',0,X'789CAB562A4ECE48CD4D54B25230D45150CACB2FCD0332950A72122B538B948022259505A92940A16AA5E4FC9454909CB73948BC2CB338B304C435323032D33530D6353451AAAD05009E4A1604');
INSERT INTO "version" VALUES(2,'2026-03-14T10:00:06.000Z','ot',1,2,X'789C45CA310E84201040D17E4E41A8D5A0188DC59EC0231062088C3885B041E2F9452D2CFFCFB3D121FB313E8F1C4E3A28DFD1896EA885ACDB9E835265A2D610CCFE48BB51E0F037297FF5A226A171147CC18E12DA4C312C0E7D71938035268B8B5F4B29D9574C0E8DD070015309259B','3906132291c1be86734ff42754ffa2365f696b0c4599d06b659fb4d997c41f7f','measured',0,X'789C4D8A510A83301044AF22FBAD251AB1B457E8114A9190ACBA503721A60509DEBDD9F6A7CCCFCC9B9761B30BAE06AE555B57C0FEC5A542789A1D231492F680AEA00CD63B94EF7616FEA68D92CC4E7543A374D3F6820B14E99E81CDFAD5ED422C4F3031FDEF88C611CF3FD951449BC8F3E850D0451563F2D1E2384FA2E8BEAEF470528F43727C00BFEE3521');
CREATE TABLE visit (
	id INTEGER NOT NULL, 
	at VARCHAR(24) NOT NULL, 
	who VARCHAR(80) NOT NULL, 
	player_id INTEGER NOT NULL, 
	number INTEGER NOT NULL, 
	CONSTRAINT pk_visit PRIMARY KEY (id), 
	CONSTRAINT fk_visit_player_id FOREIGN KEY(player_id) REFERENCES player (id), 
	CONSTRAINT uq_visit_player_id_number UNIQUE (player_id, number)
);
INSERT INTO "visit" VALUES(1,'2026-03-14T10:00:03.000Z','ot',1,1);
CREATE TABLE visit_fact (
	visit_id INTEGER NOT NULL, 
	on_date VARCHAR(10) NOT NULL, 
	sites JSON NOT NULL, 
	game VARCHAR(200) NOT NULL, 
	problems INTEGER NOT NULL, 
	CONSTRAINT pk_visit_fact PRIMARY KEY (visit_id), 
	CONSTRAINT fk_visit_fact_visit_id FOREIGN KEY(visit_id) REFERENCES visit (id)
);
INSERT INTO "visit_fact" VALUES(1,'2026-03-14','["chin"]','',0);
CREATE INDEX ix_account_name ON account (name);
CREATE INDEX ix_setting_name ON setting (name);
CREATE INDEX ix_act_player_id ON act (player_id);
CREATE INDEX ix_consent_player_id ON consent (player_id);
CREATE INDEX ix_loan_act_loan ON loan_act (loan);
CREATE INDEX ix_loan_act_player_id ON loan_act (player_id);
CREATE INDEX ix_visit_player_id ON visit (player_id);
CREATE INDEX ix_document_visit_id ON document (visit_id);
CREATE UNIQUE INDEX uq_document_shelf ON document (name) WHERE visit_id IS NULL;
CREATE INDEX ix_plan_visit_id ON "plan" (visit_id);
CREATE INDEX ix_recording_visit_id ON recording (visit_id);
CREATE INDEX ix_recording_act_recording_id ON recording_act (recording_id);
CREATE INDEX ix_version_document_id ON version (document_id);
CREATE INDEX ix_plan_input_plan_id ON plan_input (plan_id);
CREATE INDEX ix_plan_input_recording_id ON plan_input (recording_id);
CREATE INDEX ix_plan_input_version_id ON plan_input (version_id);
CREATE INDEX ix_reading_version_id ON reading (version_id);
CREATE INDEX ix_reading_visit_id ON reading (visit_id);
COMMIT;
