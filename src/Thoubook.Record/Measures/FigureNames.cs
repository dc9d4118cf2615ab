namespace Thoubook.Record.Measures;

/// <summary>
/// Figures by the names that stand in gaps and circuits: looked up from a part upwards, the first found is meant; one that starts with a stroke
/// (<c>/crank.throw</c>) is looked up from the top only.
/// </summary>
public static class FigureNames
{
    /// <summary>Whether a text has the look of a figure's name and not of a quantity: no blanks, and a letter where a quantity has its number.</summary>
    public static bool LooksLikeOne(string text)
    {
        var name = text.StartsWith('/') ? text[1..] : text;
        var dot = name.LastIndexOf('.');
        return name.Split('/', '.').All(NameText.IsSegment)
            && (char.IsAsciiLetterLower(name[0]) || text[0] == '/' || (dot >= 0 && char.IsAsciiLetterLower(name[dot + 1])));
    }

    /// <summary>The figure that a name means; null where there is none.</summary>
    /// <param name="name">The name as written.</param>
    /// <param name="from">The part from which it is looked up; null: from the top.</param>
    /// <param name="record">The engine.</param>
    public static Figure? Find(string name, PartName? from, EngineRecord record)
    {
        if (name.StartsWith('/'))
            return FigureName.TryRead(name[1..], out var fromTop, out _) ? record.Index.Figure(fromTop) : null;

        for (var within = from; within is { } part; within = part.Parent)
        {
            var separator = name.Contains('.', StringComparison.Ordinal) ? '/' : '.';
            if (FigureName.TryRead($"{part}{separator}{name}", out var inside, out _) && record.Index.Figure(inside) is { } figure)
                return figure;
        }

        return FigureName.TryRead(name, out var top, out _) ? record.Index.Figure(top) : null;
    }

    /// <summary>The shortest name by which a figure is found from a part.</summary>
    public static string From(PartName? from, FigureName figure, EngineRecord record)
    {
        var full = figure.ToString();
        var shortest = full;
        for (var within = from; within is { } part; within = part.Parent)
        {
            if (figure.Part.IsWithin(part))
            {
                shortest = figure.Part == part ? figure.Local : full[(part.Path.Length + 1)..];
                break;
            }
        }

        return Find(shortest, from, record)?.Name == figure ? shortest
            : Find(full, from, record)?.Name == figure ? full
            : "/" + full;
    }

    /// <summary>The name nearest to one that is not there; null where none is near.</summary>
    public static string? Nearest(string name, PartName? from, EngineRecord record)
    {
        var figures = record.Dimensions.Concat<Figure>(record.Fits).Select(f => f.Name).ToList();
        return Record.Nearest.Of(name, figures.Select(f => From(from, f, record))) ?? Record.Nearest.Of(name, figures.Select(f => f.ToString()));
    }
}
