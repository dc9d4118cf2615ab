namespace Thoubook.OutsideChecks;

/// <summary>Where the expected value of a check comes from. Every test that checks a sum against the outside carries one.</summary>
[AttributeUsage(AttributeTargets.Method | AttributeTargets.Class)]
public abstract class SourceAttribute(string source) : Attribute
{
    public string Source { get; } = source;

    public abstract string Kind { get; }
}

/// <summary>A published standard, handbook, table or worked example, seen.</summary>
public sealed class PublishedAttribute(string source) : SourceAttribute(source)
{
    public override string Kind => "published";
}

/// <summary>A rule of the trade with no source.</summary>
public sealed class CommonPracticeAttribute(string source) : SourceAttribute(source)
{
    public override string Kind => "common practice";
}

/// <summary>Believed to come from the source named, which was not seen.</summary>
public sealed class FromMemoryAttribute(string source) : SourceAttribute(source)
{
    public override string Kind => "from memory";
}

/// <summary>An independent computation, named with its method and error.</summary>
public sealed class ComputedAttribute(string source) : SourceAttribute(source)
{
    public override string Kind => "computed";
}
