namespace Thoubook.Web.Drawings.Circuits;

/// <summary>A drawing of an oil circuit, ready to be drawn: strokes, hatching, marks and lettering with their places in px.</summary>
public sealed class CircuitPlan
{
    /// <summary>The frame that carries the zones.</summary>
    public const double Frame = 24;

    public const int ZonesAcross = 8;

    public const int ZonesDown = 4;

    public required double Width { get; init; }

    public required double Height { get; init; }

    public required IReadOnlyList<Stroke> Strokes { get; init; }

    public required IReadOnlyList<Hatching> Hatchings { get; init; }

    public required IReadOnlyList<PlacedMark> Marks { get; init; }

    public required IReadOnlyList<Lettered> Letters { get; init; }

    /// <summary>Where each element of the sketch stands: <c>C5</c>.</summary>
    public required IReadOnlyList<string> Zones { get; init; }

    /// <summary>Above these flows, in the unit of the drawing, a line is drawn wider, and wider still.</summary>
    public required (double Wide, double Heavy) FlowSteps { get; init; }

    /// <summary>Height goes by the square root of the pressure.</summary>
    public required bool IsRootScale { get; init; }

    public static CircuitPlan Of(CircuitSketch sketch) => CircuitPlanner.Plan(sketch);

    /// <summary>The zone of a place on the sheet: <c>C5</c>.</summary>
    public static string Zone(double x, double y, double width, double height) =>
        $"{(char)('A' + (int)Math.Clamp(y / height * ZonesDown, 0, ZonesDown - 1))}{1 + (int)Math.Clamp(x / width * ZonesAcross, 0, ZonesAcross - 1)}";
}

/// <param name="Path">In SVG's own letters.</param>
/// <param name="Style">The class that it is drawn with.</param>
public readonly record struct Stroke(string Path, string Style);

public readonly record struct Hatching(double X, double Y, double Width, double Height, bool IsLeaning);

/// <param name="Mark">Its shape.</param>
/// <param name="IsFirm">Drawn in full lines; else dashed, not measured.</param>
/// <param name="IsBlanked">Drawn with two dots.</param>
/// <param name="Title">What it is, said.</param>
public readonly record struct PlacedMark(SketchMark Mark, double X, double Y, bool IsFirm, bool IsBlanked, string Title);

public enum Anchor
{
    Start,
    Middle,
    End,
}

/// <summary>A line of lettering; upright ones read from the right-hand side of the sheet.</summary>
public readonly record struct Lettered(string Text, double X, double Y, Anchor Anchor = Anchor.Start, bool IsBold = false, bool IsLarge = false, bool IsQuiet = false, bool IsUpright = false)
{
    public const double Usual = 13;

    public const double Large = 18;

    public double Size => IsLarge ? Large : Usual;

    /// <summary>The room that it takes on the sheet.</summary>
    public Box Box
    {
        get
        {
            var length = LetterWidth.Of(Text, Size, IsBold);
            var before = Anchor switch { Anchor.Middle => length / 2, Anchor.End => length, _ => 0 };
            return IsUpright
                ? new(X - (LetterWidth.Ascent * Size), Y - length + before, X + (LetterWidth.Descent * Size), Y + before)
                : new(X - before, Y - (LetterWidth.Ascent * Size), X - before + length, Y + (LetterWidth.Descent * Size));
        }
    }
}

public readonly record struct Box(double Left, double Top, double Right, double Bottom)
{
    public bool Meets(Box other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    /// <summary>Whether a straight line runs through it.</summary>
    public bool Meets(double x1, double y1, double x2, double y2)
    {
        double from = 0, to = 1;
        return Clip(x1, x2 - x1, Left, Right) && Clip(y1, y2 - y1, Top, Bottom) && from <= to;

        bool Clip(double start, double run, double low, double high)
        {
            if (run == 0)
                return start > low && start < high;
            var (a, b) = ((low - start) / run, (high - start) / run);
            (from, to) = (Math.Max(from, Math.Min(a, b)), Math.Min(to, Math.Max(a, b)));
            return from <= to;
        }
    }
}
