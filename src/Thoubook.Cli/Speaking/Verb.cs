namespace Thoubook.Cli.Speaking;

/// <summary>The exit statuses of the command.</summary>
internal enum ExitStatus
{
    Good = 0,

    /// <summary>The engine falls short: something stands in its way, or the store has a fault.</summary>
    FallsShort = 1,

    /// <summary>Usage, bad input, or a question that wants an answer.</summary>
    BadInput = 2,

    /// <summary>Something broke.</summary>
    Broke = 3,
}

/// <summary>One thing the command can be asked to do.</summary>
/// <param name="Name">One word or two: <c>appraise</c>, <c>reading add</c>.</param>
/// <param name="Purpose">What it does, in a line.</param>
/// <param name="Run">Does it.</param>
internal sealed record Verb(string Name, string Purpose, Func<Request, Terminal, ExitStatus> Run)
{
    public IReadOnlyList<Operand> Operands { get; init; } = [];

    /// <summary>Beside those that every verb takes (<see cref="Option.Everywhere"/>).</summary>
    public IReadOnlyList<Option> Options { get; init; } = [];

    /// <summary>What a person needs to know beyond the list of options.</summary>
    public string More { get; init; } = "";

    /// <summary>Whole command lines, each with what it does.</summary>
    public required IReadOnlyList<Example> Examples { get; init; }

    /// <summary>Help on what the operands name, where there is any; null: the help of the verb.</summary>
    public Func<Request, Terminal, ExitStatus?>? HelpOnOperands { get; init; }

    public IEnumerable<Option> AllOptions => Options.Concat(Option.Everywhere);
}

/// <summary>A word that stands in its place rather than behind an option.</summary>
internal sealed record Operand(string Name, string What)
{
    public bool Optional { get; init; }

    /// <summary>Takes all that is left. Only the last one may.</summary>
    public bool Rest { get; init; }

    public override string ToString() => (Optional, Rest) switch
    {
        (true, true) => $"[{Name}…]",
        (true, false) => $"[{Name}]",
        (false, true) => $"{Name}…",
        _ => Name,
    };
}

/// <summary>An option, written <c>--name</c> or <c>--name VALUE</c>.</summary>
/// <param name="Name">Without the dashes.</param>
/// <param name="Value">What its value is called in the help; null: it takes none.</param>
/// <param name="What">What it does.</param>
internal sealed record Option(string Name, string? Value, string What)
{
    public static readonly Option Workshop = new("workshop", "DIR", "the workshop to work in; else THOUBOOK_WORKSHOP, else the one in your data directory");
    public static readonly Option Help = new("help", null, "this help") { Short = "-h" };
    public static readonly IReadOnlyList<Option> Everywhere = [Workshop, Help];

    public static readonly Option Json = new("json", null, "answer as JSON on standard output");
    public static readonly Option Confirm = new("confirm", "CODE", "answers a question with the meaning that the code names; may be given again") { Many = true };
    public static readonly Option By = new("by", "WHO", "who: a name or a role such as owner, bench, machinist");
    public static readonly Option At = new("at", "TIME", "when, such as 2026-11-01T10:00:00+00:00; else now");
    public static readonly Option Id = new("id", "UUID", "the identifier of the fact, so that a thing sent twice is stored once; else a new one");
    public static readonly Option Engine = new("engine", "ENGINE", "the engine by name");

    public string? Short { get; init; }

    /// <summary>Whether it may be given more than once.</summary>
    public bool Many { get; init; }

    public override string ToString() => (Short is null ? "" : Short + ", ") + $"--{Name}" + (Value is null ? "" : $" {Value}");
}

internal sealed record Example(string Line, string What);
