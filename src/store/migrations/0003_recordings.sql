CREATE TABLE "analysis" (
	"workshop" text NOT NULL,
	"hash" text NOT NULL,
	"method" text NOT NULL,
	"version" text NOT NULL,
	"input" text NOT NULL,
	"answer" jsonb NOT NULL,
	"made_at" timestamp (3) with time zone NOT NULL,
	CONSTRAINT "analysis_workshop_hash_method_version_input_pk" PRIMARY KEY("workshop","hash","method","version","input")
);
--> statement-breakpoint
CREATE TABLE "job" (
	"workshop" text NOT NULL,
	"instrument" text NOT NULL,
	"id" text NOT NULL,
	"recording_id" text NOT NULL,
	"task" jsonb NOT NULL,
	"work" text NOT NULL,
	"status" text NOT NULL,
	"attempts" integer NOT NULL,
	"progress" double precision NOT NULL,
	"failure" jsonb,
	"worker" text,
	"leased_until" timestamp (3) with time zone,
	"asked_at" timestamp (6) with time zone DEFAULT clock_timestamp() NOT NULL,
	CONSTRAINT "job_workshop_id_pk" PRIMARY KEY("workshop","id")
);
--> statement-breakpoint
CREATE UNIQUE INDEX "job_once_in_line" ON "job" USING btree ("workshop","work") WHERE "job"."status" in ('waiting', 'running');--> statement-breakpoint
CREATE INDEX "job_line" ON "job" USING btree ("status","asked_at");