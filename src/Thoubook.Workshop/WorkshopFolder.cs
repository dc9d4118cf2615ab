namespace Thoubook.Workshop;

/// <summary>Where the workshop is that somebody means.</summary>
public static class WorkshopFolder
{
    /// <summary>Names the folder where nothing else does.</summary>
    public const string Variable = "THOUBOOK_WORKSHOP";

    /// <summary>The one stated; else the one that the variable names; else the one in the user's data directory.</summary>
    /// <param name="stated">What was said on the command line.</param>
    /// <param name="variable">The value of <see cref="Variable"/>.</param>
    /// <param name="usual">The workshop's name in the data directory.</param>
    public static string Of(string? stated, string? variable, string usual = "workshop") => Path.GetFullPath(
        !string.IsNullOrWhiteSpace(stated) ? stated
        : !string.IsNullOrWhiteSpace(variable) ? variable
        : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "thoubook", usual));
}
