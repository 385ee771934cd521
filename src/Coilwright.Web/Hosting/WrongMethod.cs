using Coilwright.Web.Endpoints;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Template;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright.Web.Hosting;

/// <summary>What is answered where no route fits: which methods the address does take, or that nothing stands there.</summary>
internal static class WrongMethod
{
    public static async Task AnswerAsync(HttpContext context)
    {
        string[] allowed = [.. Allowed(context).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.Ordinal)];
        if (allowed.Length == 0)
        {
            await ((IResult)Answers.NotFoundPage()).ExecuteAsync(context);
            return;
        }

        string list = string.Join(", ", allowed);
        context.Response.OnStarting(() =>
        {
            context.Response.Headers.Allow = list;
            return Task.CompletedTask;
        });
        await Refusal.WriteAsync(
            context,
            StatusCodes.Status405MethodNotAllowed,
            "request",
            $"This address does not take {context.Request.Method}. Nothing was changed.",
            list
        );
    }

    private static IEnumerable<string> Allowed(HttpContext context)
    {
        IInlineConstraintResolver constraints = context.RequestServices.GetRequiredService<IInlineConstraintResolver>();
        EndpointDataSource all = context.RequestServices.GetRequiredService<EndpointDataSource>();
        foreach (RouteEndpoint endpoint in all.Endpoints.OfType<RouteEndpoint>())
        {
            if (
                endpoint.Metadata.GetMetadata<IHttpMethodMetadata>() is { HttpMethods.Count: > 0 } methods
                && Fits(endpoint, context, constraints)
            )
            {
                foreach (string method in methods.HttpMethods)
                {
                    yield return method;
                }
            }
        }
    }

    private static bool Fits(RouteEndpoint endpoint, HttpContext context, IInlineConstraintResolver constraints)
    {
        RouteTemplate template = TemplateParser.Parse(endpoint.RoutePattern.RawText ?? "");
        RouteValueDictionary values = [];
        return new TemplateMatcher(template, []).TryMatch(context.Request.Path, values)
            && template.Parameters.All(parameter =>
                parameter.InlineConstraints.All(inline =>
                    constraints
                        .ResolveConstraint(inline.Constraint)
                        ?.Match(context, null, parameter.Name!, values, RouteDirection.IncomingRequest)
                    ?? true
                )
            );
    }
}
