CREATE TABLE "card" (
	"workshop" text NOT NULL,
	"instrument" text NOT NULL,
	"entity" text NOT NULL,
	"place" text NOT NULL,
	"body" jsonb NOT NULL,
	"standing" boolean NOT NULL,
	"made_seq" integer NOT NULL,
	"made_index" integer NOT NULL,
	CONSTRAINT "card_workshop_instrument_entity_place_pk" PRIMARY KEY("workshop","instrument","entity","place")
);
--> statement-breakpoint
CREATE TABLE "chain_head" (
	"workshop" text NOT NULL,
	"instrument" text NOT NULL,
	"seq" integer NOT NULL,
	"hash" text NOT NULL,
	CONSTRAINT "chain_head_workshop_instrument_pk" PRIMARY KEY("workshop","instrument")
);
--> statement-breakpoint
CREATE TABLE "event" (
	"workshop" text NOT NULL,
	"instrument" text NOT NULL,
	"seq" integer NOT NULL,
	"at" timestamp (3) with time zone NOT NULL,
	"undoes" integer,
	"undone_by" integer,
	"touched" text[] NOT NULL,
	"used" text[] NOT NULL,
	"text" text NOT NULL,
	"hash" text NOT NULL,
	CONSTRAINT "event_workshop_instrument_seq_pk" PRIMARY KEY("workshop","instrument","seq")
);
--> statement-breakpoint
CREATE TABLE "person" (
	"workshop" text NOT NULL,
	"reference" text NOT NULL,
	"name" text NOT NULL,
	CONSTRAINT "person_workshop_reference_pk" PRIMARY KEY("workshop","reference")
);
--> statement-breakpoint
CREATE TABLE "reading" (
	"workshop" text NOT NULL,
	"instrument" text NOT NULL,
	"id" text NOT NULL,
	"seq" integer NOT NULL,
	"place" text NOT NULL,
	"cycle" integer NOT NULL,
	"state" text NOT NULL,
	"quantity" text NOT NULL,
	"scope" text NOT NULL,
	"index" integer NOT NULL,
	"repeat" integer NOT NULL,
	"typed" text,
	"value" double precision,
	"outcome" text,
	"uncertainty" double precision,
	"basis" text NOT NULL,
	"remark" text NOT NULL,
	"session_id" text,
	"at" timestamp (3) with time zone NOT NULL,
	"by" text NOT NULL,
	"standing" boolean NOT NULL,
	"withdrawn" boolean NOT NULL,
	"superseded_by" text,
	CONSTRAINT "reading_workshop_instrument_id_pk" PRIMARY KEY("workshop","instrument","id")
);
--> statement-breakpoint
CREATE TABLE "send" (
	"workshop" text NOT NULL,
	"instrument" text NOT NULL,
	"send_id" text NOT NULL,
	"digest" text NOT NULL,
	"seq" integer NOT NULL,
	"answer" jsonb NOT NULL,
	CONSTRAINT "send_workshop_instrument_send_id_pk" PRIMARY KEY("workshop","instrument","send_id")
);
--> statement-breakpoint
CREATE INDEX "chain_head_instrument" ON "chain_head" USING btree ("instrument");--> statement-breakpoint
CREATE UNIQUE INDEX "reading_one_stands" ON "reading" USING btree ("workshop","instrument","place") WHERE "reading"."standing";--> statement-breakpoint
CREATE INDEX "reading_place" ON "reading" USING btree ("workshop","instrument","place");