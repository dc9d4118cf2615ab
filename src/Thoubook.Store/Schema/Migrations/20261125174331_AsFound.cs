using Microsoft.EntityFrameworkCore.Migrations;

namespace Thoubook.Store.Schema.Migrations;

/// <summary>What was found before it was disturbed, the permission to run, modification states, parts that go together, and tools kept.</summary>
internal partial class AsFound : Migration
{
    protected override void Up(MigrationBuilder migrationBuilder)
    {
        migrationBuilder.AddColumn<string>(
            name: "asks",
            table: "part",
            type: "TEXT",
            nullable: false,
            defaultValue: "[]")
            .Annotation("Relational:ColumnOrder", 11);

        migrationBuilder.AddColumn<string>(
            name: "deleted_by",
            table: "part",
            type: "TEXT",
            nullable: true)
            .Annotation("Relational:ColumnOrder", 9);

        migrationBuilder.AddColumn<long>(
            name: "function_unknown",
            table: "part",
            type: "INTEGER",
            nullable: false,
            defaultValue: 0L)
            .Annotation("Relational:ColumnOrder", 10);

        migrationBuilder.AddColumn<string>(
            name: "asks",
            table: "joint",
            type: "TEXT",
            nullable: false,
            defaultValue: "[]")
            .Annotation("Relational:ColumnOrder", 15);

        migrationBuilder.AddColumn<string>(
            name: "states",
            table: "engine",
            type: "TEXT",
            nullable: false,
            defaultValue: "[]")
            .Annotation("Relational:ColumnOrder", 10);

        migrationBuilder.CreateTable(
            name: "as_found",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                what = table.Column<string>(type: "TEXT", nullable: false),
                part = table.Column<string>(type: "TEXT", nullable: true),
                joint_id = table.Column<long>(type: "INTEGER", nullable: true),
                figure_id = table.Column<long>(type: "INTEGER", nullable: true),
                tight_is_negative = table.Column<long>(type: "INTEGER", nullable: false),
                value_si = table.Column<double>(type: "REAL", nullable: true),
                value_unit = table.Column<string>(type: "TEXT", nullable: true),
                value_text = table.Column<string>(type: "TEXT", nullable: true),
                words = table.Column<string>(type: "TEXT", nullable: true),
                tag = table.Column<string>(type: "TEXT", nullable: true),
                skipped = table.Column<long>(type: "INTEGER", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_as_found", x => x.sequence);
                table.ForeignKey(
                    name: "FK_as_found_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_as_found_figure_figure_id",
                    column: x => x.figure_id,
                    principalTable: "figure",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_as_found_joint_joint_id",
                    column: x => x.joint_id,
                    principalTable: "joint",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "permission_item",
            columns: table => new
            {
                id = table.Column<long>(type: "INTEGER", nullable: false),
                engine_id = table.Column<long>(type: "INTEGER", nullable: false),
                revision = table.Column<long>(type: "INTEGER", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                what = table.Column<string>(type: "TEXT", nullable: true),
                relies_on = table.Column<string>(type: "TEXT", nullable: false),
                purposes = table.Column<string>(type: "TEXT", nullable: false),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_permission_item", x => x.id);
                table.ForeignKey(
                    name: "FK_permission_item_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "permission_line",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                line = table.Column<string>(type: "TEXT", nullable: false),
                purpose = table.Column<string>(type: "TEXT", nullable: false),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_permission_line", x => x.sequence);
                table.ForeignKey(
                    name: "FK_permission_line_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "together",
            columns: table => new
            {
                id = table.Column<long>(type: "INTEGER", nullable: false),
                engine_id = table.Column<long>(type: "INTEGER", nullable: false),
                revision = table.Column<long>(type: "INTEGER", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                parts = table.Column<string>(type: "TEXT", nullable: false),
                why = table.Column<string>(type: "TEXT", nullable: true),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_together", x => x.id);
                table.ForeignKey(
                    name: "FK_together_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "tool",
            columns: table => new
            {
                id = table.Column<long>(type: "INTEGER", nullable: false),
                engine_id = table.Column<long>(type: "INTEGER", nullable: false),
                revision = table.Column<long>(type: "INTEGER", nullable: false),
                name_key = table.Column<string>(type: "TEXT", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                what = table.Column<string>(type: "TEXT", nullable: true),
                made = table.Column<string>(type: "TEXT", nullable: true),
                kept = table.Column<string>(type: "TEXT", nullable: true),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_tool", x => x.id);
                table.ForeignKey(
                    name: "FK_tool_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateIndex(
            name: "IX_permission_item_engine_id_name",
            table: "permission_item",
            columns: new[] { "engine_id", "name" },
            unique: true);

        migrationBuilder.CreateIndex(
            name: "IX_together_engine_id_name",
            table: "together",
            columns: new[] { "engine_id", "name" },
            unique: true);

        migrationBuilder.CreateIndex(
            name: "IX_tool_engine_id_name_key",
            table: "tool",
            columns: new[] { "engine_id", "name_key" },
            unique: true);

        foreach (var table in new[] { "as_found", "permission_line" })
            AppendOnlyTriggers.Add(migrationBuilder, table, "sequence = NEW.sequence");
    }
}
