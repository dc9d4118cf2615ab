using Microsoft.EntityFrameworkCore.Migrations;

namespace Thoubook.Store.Schema;

/// <summary>The triggers that keep the rows of a table as they were written.</summary>
internal static class AppendOnlyTriggers
{
    /// <summary>The third closes the way round the others by INSERT OR REPLACE, whose deletions fire none.</summary>
    /// <param name="migrationBuilder">The migration that makes the table.</param>
    /// <param name="table">The table.</param>
    /// <param name="same">By what a row would take the place of another.</param>
    public static void Add(MigrationBuilder migrationBuilder, string table, string same)
    {
        const string Instead = "strike it out and write another";
        migrationBuilder.Sql($"CREATE TRIGGER {table}_is_never_changed BEFORE UPDATE ON {table} BEGIN SELECT RAISE(ABORT, 'an entry is never changed: {Instead}'); END;");
        migrationBuilder.Sql($"CREATE TRIGGER {table}_is_never_deleted BEFORE DELETE ON {table} BEGIN SELECT RAISE(ABORT, 'an entry is never deleted: {Instead}'); END;");
        migrationBuilder.Sql($"CREATE TRIGGER {table}_is_never_replaced BEFORE INSERT ON {table} WHEN EXISTS (SELECT 1 FROM {table} WHERE {same}) BEGIN SELECT RAISE(ABORT, 'an entry is never replaced: {Instead}'); END;");
    }
}
