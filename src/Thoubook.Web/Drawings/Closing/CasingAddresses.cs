using Thoubook.Record.Closing;

namespace Thoubook.Web.Drawings.Closing;

/// <summary>Where the names in a drawing of casings lead, and how they are said.</summary>
/// <param name="Space">The address of a space.</param>
/// <param name="Step">The address of a step.</param>
/// <param name="Said">A space in words.</param>
/// <param name="StepSaid">A step in words.</param>
public sealed record CasingAddresses(Func<SpaceName, string> Space, Func<StepName, string> Step, Func<Space, string> Said, Func<Step, string> StepSaid);
