
namespace Thoubook.Store;

/// <summary>A whole copy of a database of one moment, taken while others read and write.</summary>
internal static class Backups
{
    /// <summary>Written beside its final name, flushed to the disk, then given that name: a backup that is there is whole.</summary>
    public static void Make(string database, string backup)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(backup))!);
        var unfinished = $"{backup}.{Guid.NewGuid():N}.part";
        try
        {
            using (var connection = Connections.Open(database, Access.Read))
            using (var command = connection.CreateCommand())
            {
                connection.Do("PRAGMA query_only = OFF");
                command.CommandText = "VACUUM INTO $file";
                command.Parameters.AddWithValue("$file", unfinished);
                command.ExecuteNonQuery();
            }

            using (var file = new FileStream(unfinished, FileMode.Open, FileAccess.ReadWrite))
                file.Flush(flushToDisk: true);
            File.Move(unfinished, backup);
        }
        finally
        {
            File.Delete(unfinished);
        }
    }
}
