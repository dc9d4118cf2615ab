using Microsoft.Data.Sqlite;
using Thoubook.Record;

namespace Thoubook.Store;

/// <summary>What the database says when it can't do as asked, in words. What is not listed here stays an exception.</summary>
internal static class Faults
{
    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int NotADatabase = 26;

    public static Outcome<T> Guarded<T>(string file, Func<Outcome<T>> work)
    {
        try
        {
            return work();
        }
        catch (SqliteException fault) when (Explain(fault, file) is { } problem)
        {
            return problem;
        }
    }

    private static Problem? Explain(SqliteException fault, string file) => fault.SqliteErrorCode switch
    {
        Busy or Locked => new("workshop-busy", "", file, $"Another program was writing to this workshop for longer than {Connections.Patience.TotalSeconds:0} s. Nothing was written.", "Try again; if it goes on, see which program holds it."),
        ReadOnly => new("workshop-read-only", "", file, "The workshop's file or folder may not be written. Nothing was written.", "Allow writing to the folder."),
        Full => new("disk-full", "", file, "The disk is full. Nothing was written.", "Make room and try again."),
        CannotOpen => new("workshop-not-opened", "", file, "The workshop's database could not be opened.", "See that the folder may be read and written."),
        Corrupt => new("workshop-damaged", "", file, "The workshop's database is damaged.", "Keep the file as it is, and restore the last backup into another folder."),
        NotADatabase => NotAWorkshop(file),
        _ => null,
    };

    public static Problem NotAWorkshop(string file) =>
        new("not-a-workshop", "", file, "This file is not a workshop's database.", "Name the folder of a workshop, or move the file away so that a new workshop can be made.");
}
