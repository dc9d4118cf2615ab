using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Metadata.Conventions;
using Thoubook.Store.Tables;

namespace Thoubook.Store.Schema;

/// <summary>
/// The schema as Entity Framework sees it, made from the same descriptions that the statements come from. It makes the migrations and applies
/// them; day to day nothing starts it.
/// </summary>
internal sealed class WorkshopContext(DbContextOptions<WorkshopContext> options) : DbContext(options)
{
    public static IReadOnlyList<Table> Tables { get; } =
    [
        DefinitionTables.Engines, DefinitionTables.TemperatureStates, DefinitionTables.PartTemperatures, DefinitionTables.Documents,
        DefinitionTables.Parts, DefinitionTables.Pieces, DefinitionTables.Gauges,
        FigureTables.Figures, FigureTables.LimitSets, FigureTables.GapTerms, FigureTables.RepairSizes, .. CircuitTables.All, .. ClosingTables.All,
        EntryTable.Entries, EntryTable.Edits, EntryTable.ReliedOn, .. FactTables.All,
    ];

    public static WorkshopContext On(SqliteConnection connection) =>
        new(new DbContextOptionsBuilder<WorkshopContext>().UseSqlite(connection).Options);

    /// <summary>Numbers never change and nothing referred to is ever deleted, so that references need no index of their own.</summary>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        configurationBuilder.Conventions.Remove<ForeignKeyIndexConvention>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        foreach (var table in Tables)
            modelBuilder.SharedTypeEntity<Dictionary<string, object>>(table.Name, entity =>
            {
                entity.ToTable(table.Name);
                foreach (var (order, column) in table.All.Index())
                    entity.IndexerProperty(ClrType(column), column.Name).HasColumnName(column.Name).HasColumnOrder(order).ValueGeneratedNever();
                entity.HasKey([.. table.Key]);
                foreach (var column in table.All)
                    entity.IndexerProperty(ClrType(column), column.Name).IsRequired(!column.Nullable);
                foreach (var unique in table.Unique)
                    entity.HasIndex(unique).IsUnique();
                foreach (var found in table.FoundBy)
                    entity.HasIndex(found);
            });

        foreach (var table in Tables)
        {
            var entity = modelBuilder.Entity(table.Name);
            foreach (var column in table.All.Where(c => c.References is not null))
                entity.HasOne(column.References!, null).WithMany().HasForeignKey(column.Name).OnDelete(DeleteBehavior.Restrict);
        }
    }

    private static Type ClrType(Column column) => column.Kind switch
    {
        ColumnKind.Integer => column.Nullable ? typeof(long?) : typeof(long),
        ColumnKind.Real => column.Nullable ? typeof(double?) : typeof(double),
        ColumnKind.Text => typeof(string),
        _ => typeof(byte[]),
    };
}

/// <summary>For the tool that writes migrations.</summary>
internal sealed class WorkshopContextFactory : IDesignTimeDbContextFactory<WorkshopContext>
{
    public WorkshopContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<WorkshopContext>().UseSqlite("Data Source=:memory:").Options);
}
