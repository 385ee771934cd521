using System.Reflection;
using Coilwright.Application.Composition;
using Coilwright.Application.Forecasts;
using Coilwright.Application.Shops;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright.Application.Tests.Composition;

public sealed class CoilwrightServicesTests
{
    private static readonly ServiceProviderOptions s_checked = new() { ValidateOnBuild = true, ValidateScopes = true };

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public void Everything_that_needs_no_shop_can_be_made()
    {
        IServiceCollection services = new ServiceCollection().AddCoilwright(TimeProvider.System);

        using ServiceProvider provider = services.BuildServiceProvider(s_checked);

        Assert.True(services.Count > 15);
        Assert.All(services, one => Assert.IsType(one.ServiceType, provider.GetRequiredService(one.ServiceType), exactMatch: false));
    }

    [Fact]
    public async Task Every_rule_of_a_shop_can_be_asked_by_its_name_and_is_there_once()
    {
        string folder = Directory.CreateTempSubdirectory("coilwright-composed-").FullName;
        await using (OpenedShop shop = await OpenedShop.CreateAsync(Path.Combine(folder, "shop.db"), "Quay", TimeProvider.System, Cancel))
        {
            foreach (object named in new object[] { shop.Services, shop.Services.Pieces })
            {
                PropertyInfo[] names = named.GetType().GetProperties();
                Assert.True(names.Length > 8);
                Assert.All(names, name => Assert.Same(name.GetValue(named), name.GetValue(named)));
            }

            Assert.Same(shop.Use<ForecastRecipe>(), shop.Use<ForecastRecipe>());
            Assert.Same(shop.Services.Winding.Dossiers, shop.Use<Workshop.Batches.BatchDossiers>());
        }

        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_file_that_is_no_shop_is_refused_in_words()
    {
        ShopRefusedException refused = await Assert.ThrowsAsync<ShopRefusedException>(() =>
            OpenedShop.OpenAsync(typeof(CoilwrightServicesTests).Assembly.Location, TimeProvider.System, Cancel)
        );

        Assert.Contains("shop", refused.Message, StringComparison.OrdinalIgnoreCase);
    }
}
