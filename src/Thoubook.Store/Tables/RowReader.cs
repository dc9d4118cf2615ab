using Microsoft.Data.Sqlite;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Closing;
using Thoubook.Record.Quantities;

namespace Thoubook.Store.Tables;

/// <summary>Takes a row's columns one after the other, in the order in which the table describes them.</summary>
internal sealed class RowReader(SqliteDataReader reader, KnownNames known)
{
    private int _next;

    public bool Next()
    {
        _next = 0;
        return reader.Read();
    }

    public long Integer() => reader.GetInt64(_next++);

    public double Real() => reader.GetDouble(_next++);

    public string Text() => reader.GetString(_next++);

    public string? TextOrNull() => reader.IsDBNull(_next) ? Skip<string>(1) : Text();

    public T Word<T>()
        where T : struct, Enum => AsWord<T>(Text());

    public T? WordOrNull<T>()
        where T : struct, Enum => TextOrNull() is { } word ? AsWord<T>(word) : null;

    public IReadOnlyList<string> List() => ListText.Read(Text());

    public IReadOnlyList<CaughtFlow> Caught() => CaughtText.Read(Text(), known.Unit);

    public Quantity Quantity(FitSigns signs = FitSigns.NotHere)
    {
        var si = Real();
        var unit = known.Unit(Text());
        return new Quantity(si, unit.Kind, unit, Text()) { Signs = signs };
    }

    public Quantity? QuantityOrNull(FitSigns signs = FitSigns.NotHere) => reader.IsDBNull(_next) ? Skip<Quantity>(3) : Quantity(signs);

    public PlaceName Place() => known.Place(Text());

    public FigureName Figure() => known.Figures[Integer()];

    public PieceTag Piece() => known.Use(known.Pieces[Integer()]);

    public PieceTag? PieceOrNull() => IsNull() ? null : Piece();

    public FigureName? FigureOrNull() => IsNull() ? null : Figure();

    public GaugeTag? GaugeOrNull() => IsNull() ? null : known.Gauges[Integer()];

    public PartName Part() => known.Parts[Integer()];

    public PartName? PartOrNull() => IsNull() ? null : Part();

    public DocumentName Document() => known.Documents[Integer()];

    public DocumentName? DocumentOrNull() => IsNull() ? null : Document();

    public StepName Step() => known.Steps[Integer()];

    public JointName Joint() => known.Joints[Integer()];

    public JointName? JointOrNull() => IsNull() ? null : Joint();

    public WorkItem? ItemOrNull() => TextOrNull() is { } text ? AsItem(text) : null;

    public IReadOnlyList<WorkItem> ItemList() => [.. List().Select(AsItem)];

    public LineKey Line() => Text() is var text && LineKey.TryRead(text, out var line, out _)
        ? line
        : throw new InvalidDataException($"The workshop holds \"{text}\" where a line of the permission to run should stand.");

    public IReadOnlyList<T> WordList<T>()
        where T : struct, Enum => [.. List().Select(AsWord<T>)];

    // Not by a stream: that would be a handle on the row's own table, found by its number, and not this column.
    public FactId Fact() => new(new Guid(reader.GetFieldValue<byte[]>(_next++), bigEndian: true));

    public FactHead Head(Dictionary<long, List<FactId>> reliedOn)
    {
        var sequence = Integer();
        return new(sequence, Fact(), Moments.Read(Integer(), (int)Integer()), Text(), reliedOn.GetValueOrDefault(sequence) ?? []);
    }

    private static WorkItem AsItem(string text) => WorkItem.TryRead(text, out var item, out _)
        ? item
        : throw new InvalidDataException($"The workshop holds \"{text}\" where a part, joint, step, hold point or count should stand.");

    private static T AsWord<T>(string word)
        where T : struct, Enum => Words.TryRead<T>(word, out var value)
            ? value
            : throw new InvalidDataException($"The workshop holds the word \"{word}\" where one of these should stand: {string.Join(", ", Words.All<T>())}.");

    private bool IsNull()
    {
        if (!reader.IsDBNull(_next))
            return false;
        _next++;
        return true;
    }

    private T? Skip<T>(int columns)
        where T : class
    {
        _next += columns;
        return null;
    }
}
