using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Rules;

/// <summary>What a level is asked for.</summary>
internal sealed class LevelQuestion
{
    public LevelQuestion(Fluid fluid, double kilograms, EvacuationOptions options)
    {
        Fluid = fluid;
        Kilograms = kilograms;
        Options = options;
    }

    public Fluid Fluid { get; }

    public double Kilograms { get; }

    public EvacuationOptions Options { get; }
}
