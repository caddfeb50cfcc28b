using Microsoft.AspNetCore.Routing;

namespace Scuff.App.Web;

/// <summary>
/// A group of what the page may ask. A class that implements it, with a constructor without arguments, is found and offered; no list names it.
/// </summary>
internal interface IRouteGroup
{
    /// <summary>Adds its routes.</summary>
    /// <param name="routes">Where they are added; paths start with <c>/api/</c>.</param>
    /// <param name="studio">What they answer from.</param>
    void Map(IEndpointRouteBuilder routes, Studio studio);
}
