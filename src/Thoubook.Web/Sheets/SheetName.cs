using Thoubook.Record;

namespace Thoubook.Web.Sheets;

/// <summary>The sheets, in the order of the job.</summary>
public enum SheetName
{
    [Word("Bench")]
    Bench,

    [Word("Strip")]
    Strip,

    [Word("Parts")]
    Parts,

    [Word("Measure")]
    Measure,

    [Word("Decide")]
    Decide,

    [Word("Oil")]
    Oil,

    [Word("Close up")]
    CloseUp,

    [Word("Sums")]
    Sums,

    [Word("Workshop")]
    Workshop,
}
