using System.Collections.Immutable;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Schedules;

/// <summary>Which mark is the decimal one, where the figures of the file prove it.</summary>
internal static class DecimalEvidence
{
    /// <summary>
    /// The comma, where some figure can only be read so and none has a decimal point. Else nothing is proved: among figures with a point a comma
    /// may still be a slip, and a figure with two meanings is asked.
    /// </summary>
    public static DecimalMark Find(ImmutableArray<ScheduleLine> lines, ImmutableArray<TableHead> heads)
    {
        var points = 0;
        var commas = 0;
        var next = 0;
        for (var index = 0; index < lines.Length; index++)
        {
            while (next + 1 < heads.Length && heads[next + 1].First <= index)
                next++;
            var head = heads[next];
            if (index <= head.Last && index >= head.First)
                continue;
            for (var column = 0; column < lines[index].Cells.Length; column++)
            {
                if (head.Mapping[column].Use is not (ColumnUse.Limit or ColumnUse.NotUnderstood) || lines[index].Cell(column).AsSpan().IndexOfAny('.', ',') < 0)
                    continue;
                foreach (var token in FigureLexer.Scan(lines[index].Cell(column)))
                {
                    points += token.Form == FigureForm.Decimal ? 1 : 0;
                    commas += token.Form == FigureForm.DecimalComma ? 1 : 0;
                }
            }
        }

        return commas > 0 && points == 0 ? DecimalMark.Comma : DecimalMark.Unstated;
    }
}
