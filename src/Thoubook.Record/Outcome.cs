namespace Thoubook.Record;

/// <summary>What came of something a person asked for: done (perhaps with cautions), or refused with every problem at once.</summary>
public abstract record Outcome<T>
{
    private Outcome() { }

    public sealed record Ok(T Value, IReadOnlyList<Caution> Cautions) : Outcome<T>;

    public sealed record Refused(IReadOnlyList<Problem> Problems) : Outcome<T>;

    public static implicit operator Outcome<T>(T value) => new Ok(value, []);

    public static implicit operator Outcome<T>(Problem problem) => new Refused([problem]);

    public bool IsOk(out T value, out IReadOnlyList<Problem> problems)
    {
        if (this is Ok ok)
        {
            value = ok.Value;
            problems = [];
            return true;
        }

        value = default!;
        problems = ((Refused)this).Problems;
        return false;
    }

    /// <summary>The same, its problems told otherwise: with their places, or under another name.</summary>
    public Outcome<T> Told(Func<IReadOnlyList<Problem>, IReadOnlyList<Problem>> how) => this is Refused refused ? new Refused(how(refused.Problems)) : this;

    /// <summary>Goes on with the value, or carries the problems (and the cautions so far) along.</summary>
    public Outcome<TNext> Then<TNext>(Func<T, Outcome<TNext>> next) => this switch
    {
        Ok ok => next(ok.Value) switch
        {
            Outcome<TNext>.Ok after => after with { Cautions = [.. ok.Cautions, .. after.Cautions] },
            var refused => refused,
        },
        Refused refused => new Outcome<TNext>.Refused(refused.Problems),
        _ => throw new InvalidOperationException(),
    };
}

/// <summary>Something true beside a good answer that the person should know.</summary>
public sealed record Caution(string Code, string Text);

/// <summary>
/// Why something was not taken: what was found, where, what is allowed and what to do. With <see cref="Meanings"/> it is a question:
/// the same request sent again with <see cref="Code"/> confirmed is taken in the meaning that the code names.
/// </summary>
/// <param name="Code">Stable, never shown as the only words; for a question the code that confirms the first meaning.</param>
/// <param name="Field">Where: a form field, a key of a file, an option. Empty where the whole input is meant.</param>
/// <param name="Found">What was found, as it was written.</param>
/// <param name="Allowed">What would be right.</param>
/// <param name="DoThis">What the person can do now.</param>
/// <param name="Meanings">Empty for a refusal; for a question every candidate meaning with the code that confirms it.</param>
public sealed record Problem(string Code, string Field, string Found, string Allowed, string DoThis, IReadOnlyList<Meaning> Meanings)
{
    public Problem(string code, string field, string found, string allowed, string doThis)
        : this(code, field, found, allowed, doThis, [])
    {
    }

    /// <summary>Where in a file, when the input was a file.</summary>
    public Place? At { get; init; }

    public bool IsQuestion => Meanings.Count > 0;

    /// <summary>One sentence for a screen or a terminal.</summary>
    public override string ToString()
    {
        var where = At is null ? (Field.Length > 0 ? $"{Field}: " : "") : $"{At}: " + (Field.Length > 0 ? $"{Field}: " : "");
        var found = Found.Length > 0 ? $"found {Found}; " : "";
        return IsQuestion
            ? $"{where}{found}{Allowed} {DoThis} Meanings: {string.Join("; ", Meanings.Select(m => $"{m.Text} ({m.Code})"))}"
            : $"{where}{found}{Allowed} {DoThis}".TrimEnd();
    }

    /// <summary>A place in a file: line and column count from 1.</summary>
    public sealed record Place(string File, int Line, int Column)
    {
        public override string ToString() => $"{File}({Line},{Column})";
    }
}

/// <summary>One candidate meaning of a question, and the code that confirms it.</summary>
public sealed record Meaning(string Code, string Text);
