using System.Text.RegularExpressions;
using Coilwright.Storage.Model;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Coilwright.Storage.Postgres;

/// <summary>The same tables on PostgreSQL: text sorts as in a file, and names are quoted where the model has SQL.</summary>
internal sealed class PostgresShopContext : ShopContext
{
    /// <summary>The model's name for text without regard to case; made in the database under that name.</summary>
    private const string WithoutCase = "NOCASE";

    /// <summary>Text by its code points, as a file compares it.</summary>
    private const string ByCodePoints = "C";

    public PostgresShopContext(DbContextOptions<PostgresShopContext> options)
        : base(options) => Database.AutoTransactionBehavior = AutoTransactionBehavior.Always; // each write takes its turn

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        base.OnModelCreating(modelBuilder);
        modelBuilder.HasCollation(WithoutCase, locale: "und-u-ks-level2", provider: "icu", deterministic: false);
        foreach (IMutableEntityType entity in modelBuilder.Model.GetEntityTypes())
        {
            foreach (IMutableProperty property in entity.GetProperties().Where(one => IsText(one) && one.GetCollation() is null))
            {
                property.SetCollation(ByCodePoints);
            }

            foreach (IMutableIndex index in entity.GetIndexes().Where(one => one.GetFilter() is not null))
            {
                index.SetFilter(Quoted(entity, index.GetFilter()!));
            }
        }
    }

    private static bool IsText(IMutableProperty property) =>
        (property.GetValueConverter()?.ProviderClrType ?? property.GetProviderClrType() ?? property.ClrType) == typeof(string);

    /// <summary>The filter with the names of columns in quotes; text in it stays as it is.</summary>
    private static string Quoted(IMutableEntityType entity, string filter) =>
        entity
            .GetProperties()
            .Aggregate(filter, (sql, property) => Regex.Replace(sql, $"(?<!['\"\\w]){property.Name}(?!['\"\\w])", $"\"{property.Name}\""));

    /// <summary>Lets the migrations tool see the model; opens nothing.</summary>
    internal sealed class ForTheTool : IDesignTimeDbContextFactory<PostgresShopContext>
    {
        public PostgresShopContext CreateDbContext(string[] args) =>
            new(new DbContextOptionsBuilder<PostgresShopContext>().UseNpgsql("Host=nowhere").Options);
    }
}
