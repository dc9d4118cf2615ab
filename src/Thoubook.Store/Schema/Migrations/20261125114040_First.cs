using Microsoft.EntityFrameworkCore.Migrations;

namespace Thoubook.Store.Schema.Migrations;

/// <summary>The record as it began.</summary>
internal partial class First : Migration
{
    protected override void Up(MigrationBuilder migrationBuilder)
    {
        migrationBuilder.CreateTable(
            name: "engine",
            columns: table => new
            {
                id = table.Column<long>(type: "INTEGER", nullable: false),
                revision = table.Column<long>(type: "INTEGER", nullable: false),
                name_key = table.Column<string>(type: "TEXT", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                purpose = table.Column<string>(type: "TEXT", nullable: false),
                mark = table.Column<string>(type: "TEXT", nullable: true),
                serial_number = table.Column<string>(type: "TEXT", nullable: true),
                note = table.Column<string>(type: "TEXT", nullable: true),
                invented = table.Column<long>(type: "INTEGER", nullable: false),
                confidence = table.Column<double>(type: "REAL", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_engine", x => x.id);
            });

        migrationBuilder.CreateTable(
            name: "document",
            columns: table => new
            {
                id = table.Column<long>(type: "INTEGER", nullable: false),
                engine_id = table.Column<long>(type: "INTEGER", nullable: false),
                revision = table.Column<long>(type: "INTEGER", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                title = table.Column<string>(type: "TEXT", nullable: true),
                edition = table.Column<string>(type: "TEXT", nullable: true),
                amendment = table.Column<string>(type: "TEXT", nullable: true),
                rule = table.Column<string>(type: "TEXT", nullable: false),
                marks = table.Column<string>(type: "TEXT", nullable: false),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_document", x => x.id);
                table.ForeignKey(
                    name: "FK_document_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "entry",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                id = table.Column<byte[]>(type: "BLOB", nullable: false),
                engine_id = table.Column<long>(type: "INTEGER", nullable: true),
                kind = table.Column<string>(type: "TEXT", nullable: false),
                at_utc_ns = table.Column<long>(type: "INTEGER", nullable: false),
                offset_s = table.Column<long>(type: "INTEGER", nullable: false),
                by_whom = table.Column<string>(type: "TEXT", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_entry", x => x.sequence);
                table.ForeignKey(
                    name: "FK_entry_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "figure",
            columns: table => new
            {
                id = table.Column<long>(type: "INTEGER", nullable: false),
                engine_id = table.Column<long>(type: "INTEGER", nullable: false),
                revision = table.Column<long>(type: "INTEGER", nullable: false),
                sort = table.Column<string>(type: "TEXT", nullable: false),
                part = table.Column<string>(type: "TEXT", nullable: false),
                local = table.Column<string>(type: "TEXT", nullable: false),
                wear = table.Column<string>(type: "TEXT", nullable: true),
                side = table.Column<string>(type: "TEXT", nullable: false),
                kind = table.Column<string>(type: "TEXT", nullable: false),
                note = table.Column<string>(type: "TEXT", nullable: true),
                fit_kind = table.Column<string>(type: "TEXT", nullable: true),
                counts = table.Column<string>(type: "TEXT", nullable: true),
                has_ovality = table.Column<long>(type: "INTEGER", nullable: false),
                ovality_new_si = table.Column<double>(type: "REAL", nullable: true),
                ovality_new_unit = table.Column<string>(type: "TEXT", nullable: true),
                ovality_new_text = table.Column<string>(type: "TEXT", nullable: true),
                ovality_worn_si = table.Column<double>(type: "REAL", nullable: true),
                ovality_worn_unit = table.Column<string>(type: "TEXT", nullable: true),
                ovality_worn_text = table.Column<string>(type: "TEXT", nullable: true),
                has_taper = table.Column<long>(type: "INTEGER", nullable: false),
                taper_new_si = table.Column<double>(type: "REAL", nullable: true),
                taper_new_unit = table.Column<string>(type: "TEXT", nullable: true),
                taper_new_text = table.Column<string>(type: "TEXT", nullable: true),
                taper_worn_si = table.Column<double>(type: "REAL", nullable: true),
                taper_worn_unit = table.Column<string>(type: "TEXT", nullable: true),
                taper_worn_text = table.Column<string>(type: "TEXT", nullable: true),
                places = table.Column<string>(type: "TEXT", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_figure", x => x.id);
                table.ForeignKey(
                    name: "FK_figure_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "gauge",
            columns: table => new
            {
                id = table.Column<long>(type: "INTEGER", nullable: false),
                engine_id = table.Column<long>(type: "INTEGER", nullable: true),
                revision = table.Column<long>(type: "INTEGER", nullable: false),
                tag = table.Column<string>(type: "TEXT", nullable: false),
                what = table.Column<string>(type: "TEXT", nullable: true),
                resolution_si = table.Column<double>(type: "REAL", nullable: true),
                resolution_unit = table.Column<string>(type: "TEXT", nullable: true),
                resolution_text = table.Column<string>(type: "TEXT", nullable: true),
                uncertainty_si = table.Column<double>(type: "REAL", nullable: true),
                uncertainty_unit = table.Column<string>(type: "TEXT", nullable: true),
                uncertainty_text = table.Column<string>(type: "TEXT", nullable: true),
                repeatability_si = table.Column<double>(type: "REAL", nullable: true),
                repeatability_unit = table.Column<string>(type: "TEXT", nullable: true),
                repeatability_text = table.Column<string>(type: "TEXT", nullable: true),
                material = table.Column<string>(type: "TEXT", nullable: true),
                @checked = table.Column<string>(name: "checked", type: "TEXT", nullable: true),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_gauge", x => x.id);
                table.ForeignKey(
                    name: "FK_gauge_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "part",
            columns: table => new
            {
                id = table.Column<long>(type: "INTEGER", nullable: false),
                engine_id = table.Column<long>(type: "INTEGER", nullable: false),
                revision = table.Column<long>(type: "INTEGER", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                intent = table.Column<string>(type: "TEXT", nullable: false),
                material = table.Column<string>(type: "TEXT", nullable: true),
                modification_state = table.Column<string>(type: "TEXT", nullable: true),
                in_its_stead = table.Column<string>(type: "TEXT", nullable: true),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_part", x => x.id);
                table.ForeignKey(
                    name: "FK_part_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "part_temperature",
            columns: table => new
            {
                engine_id = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                state = table.Column<long>(type: "INTEGER", nullable: false),
                part = table.Column<string>(type: "TEXT", nullable: false),
                temperature_si = table.Column<double>(type: "REAL", nullable: false),
                temperature_unit = table.Column<string>(type: "TEXT", nullable: false),
                temperature_text = table.Column<string>(type: "TEXT", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_part_temperature", x => new { x.engine_id, x.position });
                table.ForeignKey(
                    name: "FK_part_temperature_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "piece",
            columns: table => new
            {
                id = table.Column<long>(type: "INTEGER", nullable: false),
                engine_id = table.Column<long>(type: "INTEGER", nullable: true),
                revision = table.Column<long>(type: "INTEGER", nullable: false),
                tag = table.Column<string>(type: "TEXT", nullable: false),
                origin = table.Column<string>(type: "TEXT", nullable: false),
                made_for = table.Column<string>(type: "TEXT", nullable: true),
                modification_state = table.Column<string>(type: "TEXT", nullable: true),
                repair_size = table.Column<string>(type: "TEXT", nullable: true),
                material = table.Column<string>(type: "TEXT", nullable: true),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_piece", x => x.id);
                table.ForeignKey(
                    name: "FK_piece_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "temperature_state",
            columns: table => new
            {
                engine_id = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                everywhere_si = table.Column<double>(type: "REAL", nullable: false),
                everywhere_unit = table.Column<string>(type: "TEXT", nullable: false),
                everywhere_text = table.Column<string>(type: "TEXT", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_temperature_state", x => new { x.engine_id, x.position });
                table.ForeignKey(
                    name: "FK_temperature_state_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "definition_edit",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                definition = table.Column<string>(type: "TEXT", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                revision = table.Column<long>(type: "INTEGER", nullable: false),
                before = table.Column<string>(type: "TEXT", nullable: true),
                after = table.Column<string>(type: "TEXT", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_definition_edit", x => x.sequence);
                table.ForeignKey(
                    name: "FK_definition_edit_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "lifted",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                of_sequence = table.Column<long>(type: "INTEGER", nullable: false),
                why = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_lifted", x => x.sequence);
                table.ForeignKey(
                    name: "FK_lifted_entry_of_sequence",
                    column: x => x.of_sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_lifted_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "relied_on",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                on_sequence = table.Column<long>(type: "INTEGER", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_relied_on", x => new { x.sequence, x.position });
                table.ForeignKey(
                    name: "FK_relied_on_entry_on_sequence",
                    column: x => x.on_sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_relied_on_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "strike_out",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                of_sequence = table.Column<long>(type: "INTEGER", nullable: false),
                why = table.Column<string>(type: "TEXT", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_strike_out", x => x.sequence);
                table.ForeignKey(
                    name: "FK_strike_out_entry_of_sequence",
                    column: x => x.of_sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_strike_out_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "gap_term",
            columns: table => new
            {
                figure_id = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                coefficient = table.Column<double>(type: "REAL", nullable: false),
                of_figure_id = table.Column<long>(type: "INTEGER", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_gap_term", x => new { x.figure_id, x.position });
                table.ForeignKey(
                    name: "FK_gap_term_figure_figure_id",
                    column: x => x.figure_id,
                    principalTable: "figure",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_gap_term_figure_of_figure_id",
                    column: x => x.of_figure_id,
                    principalTable: "figure",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "limit_set",
            columns: table => new
            {
                figure_id = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                new_least_si = table.Column<double>(type: "REAL", nullable: true),
                new_least_unit = table.Column<string>(type: "TEXT", nullable: true),
                new_least_text = table.Column<string>(type: "TEXT", nullable: true),
                new_greatest_si = table.Column<double>(type: "REAL", nullable: true),
                new_greatest_unit = table.Column<string>(type: "TEXT", nullable: true),
                new_greatest_text = table.Column<string>(type: "TEXT", nullable: true),
                worn_least_si = table.Column<double>(type: "REAL", nullable: true),
                worn_least_unit = table.Column<string>(type: "TEXT", nullable: true),
                worn_least_text = table.Column<string>(type: "TEXT", nullable: true),
                worn_greatest_si = table.Column<double>(type: "REAL", nullable: true),
                worn_greatest_unit = table.Column<string>(type: "TEXT", nullable: true),
                worn_greatest_text = table.Column<string>(type: "TEXT", nullable: true),
                wear_allowance = table.Column<string>(type: "TEXT", nullable: false),
                document_id = table.Column<long>(type: "INTEGER", nullable: true),
                document_row = table.Column<string>(type: "TEXT", nullable: true),
                marks = table.Column<string>(type: "TEXT", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_limit_set", x => new { x.figure_id, x.position });
                table.ForeignKey(
                    name: "FK_limit_set_document_document_id",
                    column: x => x.document_id,
                    principalTable: "document",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_limit_set_figure_figure_id",
                    column: x => x.figure_id,
                    principalTable: "figure",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "repair_size",
            columns: table => new
            {
                figure_id = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                step_si = table.Column<double>(type: "REAL", nullable: false),
                step_unit = table.Column<string>(type: "TEXT", nullable: false),
                step_text = table.Column<string>(type: "TEXT", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_repair_size", x => new { x.figure_id, x.position });
                table.ForeignKey(
                    name: "FK_repair_size_figure_figure_id",
                    column: x => x.figure_id,
                    principalTable: "figure",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "fit_check",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                figure_id = table.Column<long>(type: "INTEGER", nullable: false),
                value_si = table.Column<double>(type: "REAL", nullable: false),
                value_unit = table.Column<string>(type: "TEXT", nullable: false),
                value_text = table.Column<string>(type: "TEXT", nullable: false),
                method = table.Column<string>(type: "TEXT", nullable: false),
                place = table.Column<string>(type: "TEXT", nullable: false),
                gauge_id = table.Column<long>(type: "INTEGER", nullable: true),
                temperature_si = table.Column<double>(type: "REAL", nullable: true),
                temperature_unit = table.Column<string>(type: "TEXT", nullable: true),
                temperature_text = table.Column<string>(type: "TEXT", nullable: true),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_fit_check", x => x.sequence);
                table.ForeignKey(
                    name: "FK_fit_check_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_fit_check_figure_figure_id",
                    column: x => x.figure_id,
                    principalTable: "figure",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_fit_check_gauge_gauge_id",
                    column: x => x.gauge_id,
                    principalTable: "gauge",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "chosen",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                piece_id = table.Column<long>(type: "INTEGER", nullable: false),
                part_id = table.Column<long>(type: "INTEGER", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_chosen", x => x.sequence);
                table.ForeignKey(
                    name: "FK_chosen_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_chosen_part_part_id",
                    column: x => x.part_id,
                    principalTable: "part",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_chosen_piece_piece_id",
                    column: x => x.piece_id,
                    principalTable: "piece",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "decision",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                choice = table.Column<string>(type: "TEXT", nullable: false),
                piece_id = table.Column<long>(type: "INTEGER", nullable: true),
                figure_id = table.Column<long>(type: "INTEGER", nullable: true),
                basis = table.Column<string>(type: "TEXT", nullable: false),
                why = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_decision", x => x.sequence);
                table.ForeignKey(
                    name: "FK_decision_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_decision_figure_figure_id",
                    column: x => x.figure_id,
                    principalTable: "figure",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_decision_piece_piece_id",
                    column: x => x.piece_id,
                    principalTable: "piece",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "finding",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                piece_id = table.Column<long>(type: "INTEGER", nullable: true),
                part_id = table.Column<long>(type: "INTEGER", nullable: true),
                what = table.Column<string>(type: "TEXT", nullable: false),
                outcome = table.Column<string>(type: "TEXT", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_finding", x => x.sequence);
                table.ForeignKey(
                    name: "FK_finding_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_finding_part_part_id",
                    column: x => x.part_id,
                    principalTable: "part",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_finding_piece_piece_id",
                    column: x => x.piece_id,
                    principalTable: "piece",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "placed",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                piece_id = table.Column<long>(type: "INTEGER", nullable: false),
                part_id = table.Column<long>(type: "INTEGER", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_placed", x => x.sequence);
                table.ForeignKey(
                    name: "FK_placed_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_placed_part_part_id",
                    column: x => x.part_id,
                    principalTable: "part",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_placed_piece_piece_id",
                    column: x => x.piece_id,
                    principalTable: "piece",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "reading",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                piece_id = table.Column<long>(type: "INTEGER", nullable: false),
                figure_id = table.Column<long>(type: "INTEGER", nullable: false),
                value_si = table.Column<double>(type: "REAL", nullable: false),
                value_unit = table.Column<string>(type: "TEXT", nullable: false),
                value_text = table.Column<string>(type: "TEXT", nullable: false),
                place = table.Column<string>(type: "TEXT", nullable: false),
                gauge_id = table.Column<long>(type: "INTEGER", nullable: true),
                temperature_si = table.Column<double>(type: "REAL", nullable: true),
                temperature_unit = table.Column<string>(type: "TEXT", nullable: true),
                temperature_text = table.Column<string>(type: "TEXT", nullable: true),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_reading", x => x.sequence);
                table.ForeignKey(
                    name: "FK_reading_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_reading_figure_figure_id",
                    column: x => x.figure_id,
                    principalTable: "figure",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_reading_gauge_gauge_id",
                    column: x => x.gauge_id,
                    principalTable: "gauge",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_reading_piece_piece_id",
                    column: x => x.piece_id,
                    principalTable: "piece",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "work",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                piece_id = table.Column<long>(type: "INTEGER", nullable: false),
                what = table.Column<string>(type: "TEXT", nullable: false),
                altered = table.Column<string>(type: "TEXT", nullable: false),
                repair_size = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_work", x => x.sequence);
                table.ForeignKey(
                    name: "FK_work_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_work_piece_piece_id",
                    column: x => x.piece_id,
                    principalTable: "piece",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateIndex(
            name: "IX_chosen_piece_id",
            table: "chosen",
            column: "piece_id");

        migrationBuilder.CreateIndex(
            name: "IX_decision_piece_id",
            table: "decision",
            column: "piece_id");

        migrationBuilder.CreateIndex(
            name: "IX_document_engine_id_name",
            table: "document",
            columns: new[] { "engine_id", "name" },
            unique: true);

        migrationBuilder.CreateIndex(
            name: "IX_engine_name_key",
            table: "engine",
            column: "name_key",
            unique: true);

        migrationBuilder.CreateIndex(
            name: "IX_entry_engine_id_kind",
            table: "entry",
            columns: new[] { "engine_id", "kind" });

        migrationBuilder.CreateIndex(
            name: "IX_entry_id",
            table: "entry",
            column: "id",
            unique: true);

        migrationBuilder.CreateIndex(
            name: "IX_figure_engine_id_part_local",
            table: "figure",
            columns: new[] { "engine_id", "part", "local" },
            unique: true);

        migrationBuilder.CreateIndex(
            name: "IX_finding_piece_id",
            table: "finding",
            column: "piece_id");

        migrationBuilder.CreateIndex(
            name: "IX_gauge_tag",
            table: "gauge",
            column: "tag",
            unique: true);

        migrationBuilder.CreateIndex(
            name: "IX_part_engine_id_name",
            table: "part",
            columns: new[] { "engine_id", "name" },
            unique: true);

        migrationBuilder.CreateIndex(
            name: "IX_piece_tag",
            table: "piece",
            column: "tag",
            unique: true);

        migrationBuilder.CreateIndex(
            name: "IX_placed_piece_id",
            table: "placed",
            column: "piece_id");

        migrationBuilder.CreateIndex(
            name: "IX_reading_piece_id",
            table: "reading",
            column: "piece_id");

        migrationBuilder.CreateIndex(
            name: "IX_work_piece_id",
            table: "work",
            column: "piece_id");

        const string SameNumber = "sequence = NEW.sequence";
        AppendOnlyTriggers.Add(migrationBuilder, "entry", $"{SameNumber} OR id = NEW.id");
        AppendOnlyTriggers.Add(migrationBuilder, "relied_on", $"{SameNumber} AND position = NEW.position");
        foreach (var table in new[] { "definition_edit", "reading", "chosen", "placed", "lifted", "work", "finding", "fit_check", "decision", "strike_out" })
            AppendOnlyTriggers.Add(migrationBuilder, table, SameNumber);

        migrationBuilder.Sql("PRAGMA application_id = 0x54686F75;");
    }
}
