using System.Globalization;
using NodaTime;
using NodaTime.Text;
using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.EngineFiles;

/// <summary>The forms of values that stand in engine files.</summary>
internal static class Forms
{
    public static readonly Form<string?> Text = new TextForm();

    /// <summary>A text of which not even the blanks at its ends are changed.</summary>
    public static readonly Form<string?> AsTyped = new TextForm { IsTrimmed = false };

    public static readonly Form<IReadOnlyList<string>> Texts = new ListForm<string>(new ScalarForm<string>((text, _) => text, text => text));

    public static readonly Form<bool> YesNo = new ScalarForm<bool>(
        (text, _) => text switch
        {
            "true" or "yes" => true,
            "false" or "no" => false,
            _ => new Problem("file-yes-no", "", $"\"{text}\"", "Here stands true or false.", "Write one of them."),
        },
        value => value ? "true" : null)
    { Quotes = Quotes.Never };

    public static readonly Form<FactId?> Id = new ScalarForm<FactId?>(
        (text, _) => ReadId(text),
        id => id?.ToString());

    public static readonly Form<FactId> OneId = new ScalarForm<FactId>((text, _) => ReadId(text).Then<FactId>(id => id!.Value), id => id.ToString());

    public static readonly Form<OffsetDateTime?> At = new ScalarForm<OffsetDateTime?>(
        (text, _) => OffsetDateTimePattern.ExtendedIso.Parse(text) is { Success: true } at
            ? at.Value
            : new Problem("file-time", "", $"\"{text}\"", "A time is written with its offset, such as 2026-11-01T10:00:00+00:00.", "Write it so, or leave it out: the time of the import then counts."),
        at => at is { } time ? (time.Offset.Seconds % 60 == 0 ? OffsetDateTimePattern.Rfc3339 : OffsetDateTimePattern.ExtendedIso).Format(time) : null)
    { Quotes = Quotes.Always };

    public static readonly Form<LocalDate?> Date = new ScalarForm<LocalDate?>(
        (text, _) => LocalDatePattern.Iso.Parse(text) is { Success: true } date
            ? date.Value
            : new Problem("file-date", "", $"\"{text}\"", "A date is written year first, such as 2026-10-03.", "Write it so."),
        date => date is { } day ? LocalDatePattern.Iso.Format(day) : null);

    /// <summary>Of a gauge: whatever its unit says that it measures.</summary>
    public static readonly Form<Quantity?> GaugeQuantity = new QuantityForm(ReadingContext.None);

    /// <summary>A plain number that was not measured, such as a probability.</summary>
    public static Form<double> Share(double least, double greatest, double leftOut) => new ScalarForm<double>(
        (text, scope) => QuantityReader.Read(text, Scope.Of(QuantityKind.Number)).IsOk(out var number, out IReadOnlyList<Problem> _) && number.Si > least && number.Si < greatest
            ? number.Si
            : new Problem("file-number", "", $"\"{text}\"", string.Create(CultureInfo.InvariantCulture, $"Here stands a number between {least} and {greatest}."), "Write it so."),
        value => value == leftOut ? null : value.ToString("R", CultureInfo.InvariantCulture).Replace('E', 'e'))
    { Quotes = Quotes.Never };

    /// <summary>A whole number of things counted.</summary>
    /// <param name="of">What it becomes.</param>
    /// <param name="number">The number again; null where it is left out.</param>
    public static Form<T> Whole<T>(Func<int, T> of, Func<T, int?> number) => new ScalarForm<T>(
        (text, _) => QuantityReader.Read(text, Scope.Of(QuantityKind.Number)).IsOk(out var read, out IReadOnlyList<Problem> _) && read.Si is >= 0 and <= 1_000_000 && read.Si == Math.Floor(read.Si)
            ? of((int)read.Si)
            : new Problem("file-whole-number", "", $"\"{text}\"", "Here stands a whole number.", "Write how many there are."),
        value => number(value)?.ToString(CultureInfo.InvariantCulture))
    { Quotes = Quotes.Never };

    /// <summary>One of the words, in a list.</summary>
    public static Form<T> OneWord<T>()
        where T : struct, Enum => new ScalarForm<T>(Word<T>, value => value.Word());

    public static Form<T> Word<T>(T leftOut)
        where T : struct, Enum => new ScalarForm<T>(Word<T>, value => EqualityComparer<T>.Default.Equals(value, leftOut) ? null : value.Word());

    public static Form<T?> WordOrNone<T>()
        where T : struct, Enum => new ScalarForm<T?>((text, scope) => Word<T>(text, scope).Then<T?>(v => v), value => value?.Word());

    public static Form<T> Name<T>(Reader<T> read, Func<T, string> write) => new ScalarForm<T>(
        (text, _) => read(text, out var name, out var problem) ? name : problem,
        name => write(name));

    public static Form<IReadOnlyList<T>> List<T>(Form<T> item) => new ListForm<T>(item);

    /// <summary>A quantity; where its text alone would not be understood the same again, it is written as <c>{ typed: …, means: … }</c>.</summary>
    public static Form<Quantity?> Quantity(ReadingContext context) => new QuantityForm(context);

    public static Form<Quantity?> Quantity(QuantityKind kind) => new QuantityForm(Scope.Of(kind));

    /// <summary>A document and where in it: <c>overhaul-book, row 112</c>.</summary>
    public static readonly Form<Citation?> Citation = new ScalarForm<Citation?>(
        (text, scope) =>
        {
            var comma = text.IndexOf(',', StringComparison.Ordinal);
            var (written, row) = comma < 0 ? (text, "") : (text[..comma], text[(comma + 1)..].Trim());
            if (!DocumentName.TryRead(written.Trim(), out var document, out var problem))
                return problem;
            return scope.Record.Index.Document(document) is null
                ? References.Missing("document", document.Text, scope.Record.Documents.Select(d => d.Name.Text))
                : new Citation(document, row.Length > 0 ? row : null);
        },
        citation => citation is null ? null : citation.Row is null ? citation.Document.Text : $"{citation.Document}, {citation.Row}");

    private static Outcome<FactId?> ReadId(string text) => Guid.TryParseExact(text, "D", out var id)
        ? new FactId(id)
        : new Problem("file-id", "", $"\"{text}\"", "An identifier looks like 01932c5e-0000-7000-8000-000000000001.", "Copy it whole, or leave it out where the entry begins: it is then made from what the entry says.");

    private static Outcome<T> Word<T>(string text, Scope scope)
        where T : struct, Enum => Words.TryRead<T>(text, out var value)
            ? value
            : new Problem("unknown-word", "", $"\"{text}\"", $"One of: {string.Join(", ", Words.All<T>())}.", Nearest.Advice(text, Words.All<T>(), "Use one of these words."));

    public delegate bool Reader<T>(string text, out T value, [System.Diagnostics.CodeAnalysis.NotNullWhen(false)] out Problem? problem);
}

internal enum Quotes
{
    /// <summary>Where another reader of YAML would take the text for a number, a date or a truth.</summary>
    WhereNeeded,
    Always,
    Never,
}

/// <summary>A value that is one word, number or text.</summary>
internal sealed class ScalarForm<TValue>(Func<string, Scope, Outcome<TValue>> read, Func<TValue, string?> write) : Form<TValue>
{
    public Quotes Quotes { get; init; }

    public override bool TryRead(YamlNode node, string key, Scope scope, out TValue value)
    {
        value = default!;
        if (node is not YamlScalar scalar)
        {
            scope.Refuse(node, key, "file-shape", node.What, "Here stands one value.", "Write the value after the colon.");
            return false;
        }

        if (read(scalar.Value.Trim(), scope).IsOk(out value, out var problems))
            return true;
        foreach (var problem in problems)
            scope.Refuse(node, key, problem);
        return false;
    }

    public override YamlNode? Write(TValue value, Scope scope) => write(value) is { } text ? Quotes switch
    {
        Quotes.Never => new YamlScalar(text, isQuoted: false),
        Quotes.Always => new YamlScalar(text, isQuoted: true),
        _ => TextForm.Scalar(text),
    }
    : null;
}

/// <summary>Free text; blank is the same as left out.</summary>
internal sealed class TextForm : Form<string?>
{
    private const int Longest = 20_000;

    public bool IsTrimmed { get; init; } = true;

    public override bool TryRead(YamlNode node, string key, Scope scope, out string? value)
    {
        value = (node as YamlScalar)?.Value;
        value = IsTrimmed ? value?.Trim() : value;
        if (value is null)
            scope.Refuse(node, key, "file-shape", node.What, "Here stands a text.", "Put the text in quotes if brackets or braces belong to it.");
        else if (value.Length > Longest)
            scope.Refuse(node, key, "file-text-long", $"{value.Length} letters", $"A text has at most {Longest} letters.", "Make it shorter.");
        else
        {
            value = value.Length > 0 ? value : null;
            return true;
        }

        return false;
    }

    public override YamlNode? Write(string? value, Scope scope) => string.IsNullOrWhiteSpace(value) ? null : IsTrimmed ? Scalar(value.Trim()) : Scalar(value, isQuoted: value.Trim() != value);

    /// <summary>A text that another reader of YAML would take for a number, a date or a truth stands in quotes.</summary>
    public static YamlScalar Scalar(string text, bool isQuoted = false) =>
        new(text, isQuoted || text is "~" || (text.Length > 0 && (char.IsAsciiDigit(text[^1]) || text[^1] == '.') && text.All(c => char.IsAsciiDigit(c) || c is '+' or '-' or '.' or '_' or ':' or 'e' or 'E' or 'x' or 'X'))
            || text.ToLowerInvariant() is "null" or "true" or "false" or "yes" or "no" or "on" or "off" or "y" or "n" or ".inf" or "-.inf" or "+.inf" or ".nan");
}

internal sealed class ListForm<TItem>(Form<TItem> item) : Form<IReadOnlyList<TItem>>
{
    public override bool TryRead(YamlNode node, string key, Scope scope, out IReadOnlyList<TItem> value)
    {
        var items = new List<TItem>();
        value = items;
        if (node is not YamlList list)
        {
            scope.Refuse(node, key, "file-shape", node.What, "Here stands a list.", "Write it in square brackets: [one, another].");
            return false;
        }

        var isGood = true;
        foreach (var each in list.Items)
        {
            if (item.TryRead(each, key, scope, out var got))
                items.Add(got);
            else
                isGood = false;
        }

        return isGood;
    }

    public override YamlNode? Write(IReadOnlyList<TItem> value, Scope scope) =>
        value.Count == 0 ? null : new YamlList([.. value.Select(v => item.Write(v, scope) ?? new YamlScalar("~", false))]);
}

/// <summary>Entries of one shape in a list.</summary>
internal sealed class GroupForm<TItem>(Shape<TItem> shape, TItem blank) : Form<TItem>
{
    public override bool TryRead(YamlNode node, string key, Scope scope, out TItem value) => shape.TryRead(node, blank, scope, out value);

    public override YamlNode? Write(TItem value, Scope scope) => shape.Write(value, scope, isOneLine: true) is { Entries.Count: > 0 } map ? map : null;
}

internal sealed class QuantityForm(ReadingContext context) : Form<Quantity?>
{
    private static readonly Shape<(string? Typed, string? Means)> TypedAndMeant = new Shape<(string? Typed, string? Means)>("a quantity with its meaning")
        .Key("typed", Forms.AsTyped, q => q.Typed, (q, v) => (v, q.Means), Need.Required)
        .Key("means", Forms.Text, q => q.Means, (q, v) => (q.Typed, v), Need.Required);

    public static IReadOnlyList<string> Keys => TypedAndMeant.Keys;

    public override bool TryRead(YamlNode node, string key, Scope scope, out Quantity? value)
    {
        value = null;
        switch (node)
        {
            case YamlScalar scalar:
                value = scope.Quantity(scalar.Value, node, key, context);
                return value is not null;
            case YamlMap:
                if (!TypedAndMeant.TryRead(node, default, scope, out var both))
                    return false;
                value = scope.Quantity(both.Means!, node, key, Plain) is { } meant ? meant with { Text = both.Typed! } : null;
                return value is not null;
            default:
                scope.Refuse(node, key, "file-shape", node.What, "Here stands one quantity, such as 2.5 thou.", "Write one quantity.");
                return false;
        }
    }

    public override YamlNode? Write(Quantity? value, Scope scope)
    {
        if (value is null)
            return null;
        if (Reads(value.Text, context, value))
            return new YamlScalar(value.Text, isQuoted: value.Text.Trim() != value.Text);
        return TypedAndMeant.Write((value.Text, Meaning(value)), scope, isOneLine: true);
    }

    private ReadingContext Plain => new() { Kind = context.Kind, FitSigns = context.FitSigns };

    /// <summary>The shortest figure in its own unit that is read as the very same value, or else the full figure in SI.</summary>
    private string Meaning(Quantity value)
    {
        var number = value.Unit.FromSi(value.Si);
        for (var figures = 3; figures <= 17; figures++)
        {
            var text = $"{number.ToString($"G{figures}", CultureInfo.InvariantCulture).Replace('E', 'e')} {value.Unit.Symbol}".TrimEnd();
            if (Reads(text, Plain, value with { Text = text }))
                return text;
        }

        return QuantityText.Full(value.Si, value.Kind);
    }

    private static bool Reads(string text, ReadingContext context, Quantity same) => QuantityReader.Read(text, context).IsOk(out var read, out _) && read == same;
}
