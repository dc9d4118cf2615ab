using Microsoft.EntityFrameworkCore.Migrations;

namespace Thoubook.Store.Schema.Migrations;

/// <summary>Spaces, joints and steps, and what is done and agreed in closing up.</summary>
internal partial class Closing : Migration
{
    protected override void Up(MigrationBuilder migrationBuilder)
    {
        migrationBuilder.CreateTable(
            name: "counted",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                what = table.Column<string>(type: "TEXT", nullable: false),
                number = table.Column<long>(type: "INTEGER", nullable: false),
                way = table.Column<string>(type: "TEXT", nullable: false),
                space = table.Column<string>(type: "TEXT", nullable: true),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_counted", x => x.sequence);
                table.ForeignKey(
                    name: "FK_counted_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "debt",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                what = table.Column<string>(type: "TEXT", nullable: false),
                deadline = table.Column<string>(type: "TEXT", nullable: false),
                item = table.Column<string>(type: "TEXT", nullable: true),
                why = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_debt", x => x.sequence);
                table.ForeignKey(
                    name: "FK_debt_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "joint",
            columns: table => new
            {
                id = table.Column<long>(type: "INTEGER", nullable: false),
                engine_id = table.Column<long>(type: "INTEGER", nullable: false),
                revision = table.Column<long>(type: "INTEGER", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                parts = table.Column<string>(type: "TEXT", nullable: false),
                lies_in = table.Column<string>(type: "TEXT", nullable: true),
                thread = table.Column<string>(type: "TEXT", nullable: true),
                number = table.Column<long>(type: "INTEGER", nullable: false),
                tightening = table.Column<string>(type: "TEXT", nullable: true),
                locking = table.Column<string>(type: "TEXT", nullable: true),
                sealing = table.Column<string>(type: "TEXT", nullable: true),
                inspected = table.Column<long>(type: "INTEGER", nullable: false),
                document_id = table.Column<long>(type: "INTEGER", nullable: true),
                document_row = table.Column<string>(type: "TEXT", nullable: true),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_joint", x => x.id);
                table.ForeignKey(
                    name: "FK_joint_document_document_id",
                    column: x => x.document_id,
                    principalTable: "document",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_joint_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "settlement",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                of_sequence = table.Column<long>(type: "INTEGER", nullable: false),
                how = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_settlement", x => x.sequence);
                table.ForeignKey(
                    name: "FK_settlement_entry_of_sequence",
                    column: x => x.of_sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_settlement_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "space",
            columns: table => new
            {
                id = table.Column<long>(type: "INTEGER", nullable: false),
                engine_id = table.Column<long>(type: "INTEGER", nullable: false),
                revision = table.Column<long>(type: "INTEGER", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                what = table.Column<string>(type: "TEXT", nullable: true),
                lies_in = table.Column<string>(type: "TEXT", nullable: true),
                parts = table.Column<string>(type: "TEXT", nullable: false),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_space", x => x.id);
                table.ForeignKey(
                    name: "FK_space_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "step",
            columns: table => new
            {
                id = table.Column<long>(type: "INTEGER", nullable: false),
                engine_id = table.Column<long>(type: "INTEGER", nullable: false),
                revision = table.Column<long>(type: "INTEGER", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                kind = table.Column<string>(type: "TEXT", nullable: false),
                what = table.Column<string>(type: "TEXT", nullable: true),
                attitude = table.Column<string>(type: "TEXT", nullable: true),
                tools = table.Column<string>(type: "TEXT", nullable: false),
                time_si = table.Column<double>(type: "REAL", nullable: true),
                time_unit = table.Column<string>(type: "TEXT", nullable: true),
                time_text = table.Column<string>(type: "TEXT", nullable: true),
                cure_si = table.Column<double>(type: "REAL", nullable: true),
                cure_unit = table.Column<string>(type: "TEXT", nullable: true),
                cure_text = table.Column<string>(type: "TEXT", nullable: true),
                open_si = table.Column<double>(type: "REAL", nullable: true),
                open_unit = table.Column<string>(type: "TEXT", nullable: true),
                open_text = table.Column<string>(type: "TEXT", nullable: true),
                people = table.Column<long>(type: "INTEGER", nullable: false),
                places = table.Column<string>(type: "TEXT", nullable: false),
                needs = table.Column<string>(type: "TEXT", nullable: false),
                joints = table.Column<string>(type: "TEXT", nullable: false),
                brings = table.Column<string>(type: "TEXT", nullable: true),
                lies_in = table.Column<string>(type: "TEXT", nullable: false),
                closes = table.Column<string>(type: "TEXT", nullable: false),
                measures = table.Column<string>(type: "TEXT", nullable: false),
                second_look = table.Column<long>(type: "INTEGER", nullable: false),
                photograph = table.Column<string>(type: "TEXT", nullable: true),
                spoils = table.Column<string>(type: "TEXT", nullable: false),
                document_id = table.Column<long>(type: "INTEGER", nullable: true),
                document_row = table.Column<string>(type: "TEXT", nullable: true),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_step", x => x.id);
                table.ForeignKey(
                    name: "FK_step_document_document_id",
                    column: x => x.document_id,
                    principalTable: "document",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_step_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "undoing",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                of_sequence = table.Column<long>(type: "INTEGER", nullable: false),
                why = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_undoing", x => x.sequence);
                table.ForeignKey(
                    name: "FK_undoing_entry_of_sequence",
                    column: x => x.of_sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_undoing_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "departure",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                what = table.Column<string>(type: "TEXT", nullable: false),
                why = table.Column<string>(type: "TEXT", nullable: false),
                kind = table.Column<string>(type: "TEXT", nullable: false),
                piece_id = table.Column<long>(type: "INTEGER", nullable: true),
                joint_id = table.Column<long>(type: "INTEGER", nullable: true),
                item = table.Column<string>(type: "TEXT", nullable: true),
                evidence = table.Column<string>(type: "TEXT", nullable: true),
                purposes = table.Column<string>(type: "TEXT", nullable: false),
                undoing = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_departure", x => x.sequence);
                table.ForeignKey(
                    name: "FK_departure_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_departure_joint_joint_id",
                    column: x => x.joint_id,
                    principalTable: "joint",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_departure_piece_piece_id",
                    column: x => x.piece_id,
                    principalTable: "piece",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "joint_state",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                joint_id = table.Column<long>(type: "INTEGER", nullable: false),
                stage = table.Column<string>(type: "TEXT", nullable: false),
                applied_si = table.Column<double>(type: "REAL", nullable: true),
                applied_unit = table.Column<string>(type: "TEXT", nullable: true),
                applied_text = table.Column<string>(type: "TEXT", nullable: true),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_joint_state", x => x.sequence);
                table.ForeignKey(
                    name: "FK_joint_state_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_joint_state_joint_joint_id",
                    column: x => x.joint_id,
                    principalTable: "joint",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "acceptance",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                step_id = table.Column<long>(type: "INTEGER", nullable: false),
                hold = table.Column<string>(type: "TEXT", nullable: false),
                why = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_acceptance", x => x.sequence);
                table.ForeignKey(
                    name: "FK_acceptance_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_acceptance_step_step_id",
                    column: x => x.step_id,
                    principalTable: "step",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "comes_after",
            columns: table => new
            {
                step_id = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                step = table.Column<string>(type: "TEXT", nullable: false),
                why = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_comes_after", x => new { x.step_id, x.position });
                table.ForeignKey(
                    name: "FK_comes_after_step_step_id",
                    column: x => x.step_id,
                    principalTable: "step",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "hold_point",
            columns: table => new
            {
                step_id = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                kind = table.Column<string>(type: "TEXT", nullable: false),
                what = table.Column<string>(type: "TEXT", nullable: false),
                figure_id = table.Column<long>(type: "INTEGER", nullable: true),
                part = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_hold_point", x => new { x.step_id, x.position });
                table.ForeignKey(
                    name: "FK_hold_point_figure_figure_id",
                    column: x => x.figure_id,
                    principalTable: "figure",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_hold_point_step_step_id",
                    column: x => x.step_id,
                    principalTable: "step",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "signature",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                step_id = table.Column<long>(type: "INTEGER", nullable: false),
                second_look = table.Column<long>(type: "INTEGER", nullable: false),
                photographed = table.Column<long>(type: "INTEGER", nullable: false),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_signature", x => x.sequence);
                table.ForeignKey(
                    name: "FK_signature_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_signature_step_step_id",
                    column: x => x.step_id,
                    principalTable: "step",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateIndex(
            name: "IX_departure_piece_id",
            table: "departure",
            column: "piece_id");

        migrationBuilder.CreateIndex(
            name: "IX_joint_engine_id_name",
            table: "joint",
            columns: new[] { "engine_id", "name" },
            unique: true);

        migrationBuilder.CreateIndex(
            name: "IX_space_engine_id_name",
            table: "space",
            columns: new[] { "engine_id", "name" },
            unique: true);

        migrationBuilder.CreateIndex(
            name: "IX_step_engine_id_name",
            table: "step",
            columns: new[] { "engine_id", "name" },
            unique: true);

        foreach (var table in new[] { "joint_state", "acceptance", "signature", "departure", "debt", "settlement", "counted", "undoing" })
            AppendOnlyTriggers.Add(migrationBuilder, table, "sequence = NEW.sequence");
    }
}
