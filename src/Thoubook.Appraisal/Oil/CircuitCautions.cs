using System.Globalization;
using Thoubook.Mechanics.Circuits;
using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

/// <summary>What a solution is to be read with, in words and in the unit in which the circuit's pressures are read.</summary>
internal static class CircuitCautions
{
    public static Caution Of(CircuitCaution caution, OilCircuit circuit)
    {
        var inlet = $"{circuit.PressureUnit.Show(caution.Inlet, circuit.PressureDigits)} absolute";
        return new($"circuit-{Words.Word(caution.Kind)}", caution.Kind switch
        {
            CircuitCautionKind.SuctionBelowVacuum => $"{caution.Element} would draw its inlet below nothing at all: no pump does. Give it an inlet limit.",
            CircuitCautionKind.PumpStarved => string.Create(CultureInfo.InvariantCulture, $"{caution.Element} fills only {caution.Share * 100:F0} in 100: its inlet is at {inlet}."),
            CircuitCautionKind.ColumnBroken => $"{caution.Element}: at {inlet} the oil does not reach the middle of the shaft at this speed; the column parts.",
            _ => string.Create(CultureInfo.InvariantCulture, $"{caution.Element} gets only {caution.Share * 100:F0} in 100 of what it takes."),
        });
    }
}
