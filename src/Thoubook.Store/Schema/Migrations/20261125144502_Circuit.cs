using Microsoft.EntityFrameworkCore.Migrations;

namespace Thoubook.Store.Schema.Migrations;

/// <summary>The oil circuit, and the flow tests made of it.</summary>
internal partial class Circuit : Migration
{
    protected override void Up(MigrationBuilder migrationBuilder)
    {
        migrationBuilder.CreateTable(
            name: "calibration",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                of_sequence = table.Column<long>(type: "INTEGER", nullable: false),
                why = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_calibration", x => x.sequence);
                table.ForeignKey(
                    name: "FK_calibration_entry_of_sequence",
                    column: x => x.of_sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_calibration_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "circuit",
            columns: table => new
            {
                id = table.Column<long>(type: "INTEGER", nullable: false),
                engine_id = table.Column<long>(type: "INTEGER", nullable: false),
                revision = table.Column<long>(type: "INTEGER", nullable: false),
                grade = table.Column<string>(type: "TEXT", nullable: true),
                density_si = table.Column<double>(type: "REAL", nullable: true),
                density_unit = table.Column<string>(type: "TEXT", nullable: true),
                density_text = table.Column<string>(type: "TEXT", nullable: true),
                shear_factor_si = table.Column<double>(type: "REAL", nullable: true),
                shear_factor_unit = table.Column<string>(type: "TEXT", nullable: true),
                shear_factor_text = table.Column<string>(type: "TEXT", nullable: true),
                flow_test_at = table.Column<string>(type: "TEXT", nullable: true),
                flow_test_pressure_si = table.Column<double>(type: "REAL", nullable: true),
                flow_test_pressure_unit = table.Column<string>(type: "TEXT", nullable: true),
                flow_test_pressure_text = table.Column<string>(type: "TEXT", nullable: true),
                flow_test_oil_temperature_si = table.Column<double>(type: "REAL", nullable: true),
                flow_test_oil_temperature_unit = table.Column<string>(type: "TEXT", nullable: true),
                flow_test_oil_temperature_text = table.Column<string>(type: "TEXT", nullable: true),
                flow_test_eccentricity_si = table.Column<double>(type: "REAL", nullable: true),
                flow_test_eccentricity_unit = table.Column<string>(type: "TEXT", nullable: true),
                flow_test_eccentricity_text = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_circuit", x => x.id);
                table.ForeignKey(
                    name: "FK_circuit_engine_engine_id",
                    column: x => x.engine_id,
                    principalTable: "engine",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "flow_test",
            columns: table => new
            {
                sequence = table.Column<long>(type: "INTEGER", nullable: false),
                fed_at = table.Column<string>(type: "TEXT", nullable: false),
                pressure_si = table.Column<double>(type: "REAL", nullable: false),
                pressure_unit = table.Column<string>(type: "TEXT", nullable: false),
                pressure_text = table.Column<string>(type: "TEXT", nullable: false),
                oil_temperature_si = table.Column<double>(type: "REAL", nullable: false),
                oil_temperature_unit = table.Column<string>(type: "TEXT", nullable: false),
                oil_temperature_text = table.Column<string>(type: "TEXT", nullable: false),
                flow_si = table.Column<double>(type: "REAL", nullable: false),
                flow_unit = table.Column<string>(type: "TEXT", nullable: false),
                flow_text = table.Column<string>(type: "TEXT", nullable: false),
                caught = table.Column<string>(type: "TEXT", nullable: false),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_flow_test", x => x.sequence);
                table.ForeignKey(
                    name: "FK_flow_test_entry_sequence",
                    column: x => x.sequence,
                    principalTable: "entry",
                    principalColumn: "sequence",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "circuit_element",
            columns: table => new
            {
                circuit_id = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                changed_in = table.Column<long>(type: "INTEGER", nullable: false),
                kind = table.Column<string>(type: "TEXT", nullable: false),
                from_node = table.Column<string>(type: "TEXT", nullable: false),
                to_node = table.Column<string>(type: "TEXT", nullable: false),
                vent_node = table.Column<string>(type: "TEXT", nullable: true),
                blanked = table.Column<long>(type: "INTEGER", nullable: false),
                part = table.Column<string>(type: "TEXT", nullable: true),
                label = table.Column<string>(type: "TEXT", nullable: true),
                note = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_circuit_element", x => new { x.circuit_id, x.position });
                table.ForeignKey(
                    name: "FK_circuit_element_circuit_circuit_id",
                    column: x => x.circuit_id,
                    principalTable: "circuit",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "circuit_node",
            columns: table => new
            {
                circuit_id = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                pressure_si = table.Column<double>(type: "REAL", nullable: true),
                pressure_unit = table.Column<string>(type: "TEXT", nullable: true),
                pressure_text = table.Column<string>(type: "TEXT", nullable: true),
                height_si = table.Column<double>(type: "REAL", nullable: true),
                height_unit = table.Column<string>(type: "TEXT", nullable: true),
                height_text = table.Column<string>(type: "TEXT", nullable: true),
                label = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_circuit_node", x => new { x.circuit_id, x.position });
                table.ForeignKey(
                    name: "FK_circuit_node_circuit_circuit_id",
                    column: x => x.circuit_id,
                    principalTable: "circuit",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "element_value",
            columns: table => new
            {
                circuit_id = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                element = table.Column<long>(type: "INTEGER", nullable: false),
                key = table.Column<string>(type: "TEXT", nullable: false),
                given_si = table.Column<double>(type: "REAL", nullable: true),
                given_unit = table.Column<string>(type: "TEXT", nullable: true),
                given_text = table.Column<string>(type: "TEXT", nullable: true),
                figure_id = table.Column<long>(type: "INTEGER", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_element_value", x => new { x.circuit_id, x.position });
                table.ForeignKey(
                    name: "FK_element_value_circuit_circuit_id",
                    column: x => x.circuit_id,
                    principalTable: "circuit",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_element_value_figure_figure_id",
                    column: x => x.figure_id,
                    principalTable: "figure",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "oil_gauge",
            columns: table => new
            {
                circuit_id = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                at_node = table.Column<string>(type: "TEXT", nullable: false),
                height_si = table.Column<double>(type: "REAL", nullable: true),
                height_unit = table.Column<string>(type: "TEXT", nullable: true),
                height_text = table.Column<string>(type: "TEXT", nullable: true),
                uncertainty_si = table.Column<double>(type: "REAL", nullable: true),
                uncertainty_unit = table.Column<string>(type: "TEXT", nullable: true),
                uncertainty_text = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_oil_gauge", x => new { x.circuit_id, x.position });
                table.ForeignKey(
                    name: "FK_oil_gauge_circuit_circuit_id",
                    column: x => x.circuit_id,
                    principalTable: "circuit",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "oil_gauge_limit",
            columns: table => new
            {
                circuit_id = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                state = table.Column<long>(type: "INTEGER", nullable: false),
                gauge = table.Column<string>(type: "TEXT", nullable: false),
                least_si = table.Column<double>(type: "REAL", nullable: true),
                least_unit = table.Column<string>(type: "TEXT", nullable: true),
                least_text = table.Column<string>(type: "TEXT", nullable: true),
                greatest_si = table.Column<double>(type: "REAL", nullable: true),
                greatest_unit = table.Column<string>(type: "TEXT", nullable: true),
                greatest_text = table.Column<string>(type: "TEXT", nullable: true),
                document_id = table.Column<long>(type: "INTEGER", nullable: true),
                document_row = table.Column<string>(type: "TEXT", nullable: true)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_oil_gauge_limit", x => new { x.circuit_id, x.position });
                table.ForeignKey(
                    name: "FK_oil_gauge_limit_circuit_circuit_id",
                    column: x => x.circuit_id,
                    principalTable: "circuit",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
                table.ForeignKey(
                    name: "FK_oil_gauge_limit_document_document_id",
                    column: x => x.document_id,
                    principalTable: "document",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "oil_state",
            columns: table => new
            {
                circuit_id = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                name = table.Column<string>(type: "TEXT", nullable: false),
                speed_si = table.Column<double>(type: "REAL", nullable: false),
                speed_unit = table.Column<string>(type: "TEXT", nullable: false),
                speed_text = table.Column<string>(type: "TEXT", nullable: false),
                oil_temperature_si = table.Column<double>(type: "REAL", nullable: false),
                oil_temperature_unit = table.Column<string>(type: "TEXT", nullable: false),
                oil_temperature_text = table.Column<string>(type: "TEXT", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_oil_state", x => new { x.circuit_id, x.position });
                table.ForeignKey(
                    name: "FK_oil_state_circuit_circuit_id",
                    column: x => x.circuit_id,
                    principalTable: "circuit",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateTable(
            name: "viscosity_point",
            columns: table => new
            {
                circuit_id = table.Column<long>(type: "INTEGER", nullable: false),
                position = table.Column<long>(type: "INTEGER", nullable: false),
                temperature_si = table.Column<double>(type: "REAL", nullable: false),
                temperature_unit = table.Column<string>(type: "TEXT", nullable: false),
                temperature_text = table.Column<string>(type: "TEXT", nullable: false),
                viscosity_si = table.Column<double>(type: "REAL", nullable: false),
                viscosity_unit = table.Column<string>(type: "TEXT", nullable: false),
                viscosity_text = table.Column<string>(type: "TEXT", nullable: false)
            },
            constraints: table =>
            {
                table.PrimaryKey("PK_viscosity_point", x => new { x.circuit_id, x.position });
                table.ForeignKey(
                    name: "FK_viscosity_point_circuit_circuit_id",
                    column: x => x.circuit_id,
                    principalTable: "circuit",
                    principalColumn: "id",
                    onDelete: ReferentialAction.Restrict);
            });

        migrationBuilder.CreateIndex(
            name: "IX_circuit_engine_id",
            table: "circuit",
            column: "engine_id",
            unique: true);

        foreach (var table in new[] { "flow_test", "calibration" })
            AppendOnlyTriggers.Add(migrationBuilder, table, "sequence = NEW.sequence");
    }
}
