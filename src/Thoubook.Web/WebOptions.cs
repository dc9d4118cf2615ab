namespace Thoubook.Web;

/// <summary>How the web door of a workshop is opened.</summary>
public sealed record WebOptions
{
    /// <summary>On the loopback address; 0 takes any free port.</summary>
    public int Port { get; init; } = 5180;

    /// <summary>Where the keys that seal forms are kept, so that a page left open still posts after a restart. Null: they last as long as the program.</summary>
    public DirectoryInfo? Keys { get; init; }

    /// <summary>The longest thing that may be posted, a schedule or an engine file among them.</summary>
    public long LongestPost { get; init; } = 8 * 1024 * 1024;

    /// <summary>Whether what happens is also told on the terminal.</summary>
    public bool Logs { get; init; }
}
