using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>The shop's customers.</summary>
internal static class ShopEndpoints
{
    public static void MapShop(this IEndpointRouteBuilder app)
    {
        app.MapGet("/shop", async (ShopServices shop, CancellationToken cancel) => await PageAsync([], FormValues.Nothing, shop, cancel));
        app.MapPost("/shop/customers", (HttpRequest request, ShopServices shop, CancellationToken cancel) =>
            AfterAsync(request, shop, typed => shop.Pieces.Customers.AddAsync(typed.Id, typed["customer"], typed["name"], cancel), cancel)
        );
        app.MapGet("/shop/customers/erase", async (string? customer, ShopServices shop, CancellationToken cancel) =>
            await AskAsync(customer ?? "", shop, cancel)
        );
        app.MapPost("/shop/customers/erase", EraseAsync);
    }

    private static async Task<IResult> PageAsync(
        IReadOnlyList<Problem> problems,
        FormValues typed,
        ShopServices shop,
        CancellationToken cancel
    ) =>
        Answers.Page<ShopPage>(
            new()
            {
                ["Customers"] = await shop.Records.Customers.AllAsync(cancel),
                ["Problems"] = problems,
                ["Typed"] = typed,
            },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );

    /// <summary>The question before a name is erased for good.</summary>
    private static async Task<IResult> AskAsync(string reference, ShopServices shop, CancellationToken cancel)
    {
        if (await shop.Pieces.Customers.FindAsync(reference, cancel) is not { } customer)
        {
            return Answers.NotFoundPage();
        }

        int pieces = (await shop.Records.Pieces.WithAsync(new PieceQuery(CustomerId: customer.Id), cancel)).Count;
        return Answers.Page<EraseCustomerPage>(new() { ["Customer"] = customer, ["Pieces"] = pieces });
    }

    /// <summary>Erases only what was asked about on the page before.</summary>
    private static async Task<IResult> EraseAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        string reference = form["customer"].ToString();
        return form["sure"].ToString() == "yes"
            ? await AfterAsync(request, shop, typed => shop.Pieces.Customers.EraseAsync(typed["customer"], cancel), cancel)
            : await AskAsync(reference, shop, cancel);
    }

    private static async Task<IResult> AfterAsync(
        HttpRequest request,
        ShopServices shop,
        Func<FormValues, Task<IReadOnlyList<Problem>>> act,
        CancellationToken cancel
    )
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        IReadOnlyList<Problem> problems = await act(typed);
        return problems.Count == 0 ? Results.LocalRedirect("/shop") : await PageAsync(problems, typed, shop, cancel);
    }
}
