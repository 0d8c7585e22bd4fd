namespace Refrigerant.Recovery.Estimation;

/// <summary>What acts on the reduced model from outside. SI.</summary>
internal struct ReducedInputs
{
    /// <summary>Temperature of the air, K.</summary>
    public double AirTemperature;

    /// <summary>Whether the machine runs with its valves open: else nothing flows.</summary>
    public bool IsDrawing;

    /// <summary>What is taken for granted about the phases.</summary>
    public AssumedPhase Phase;

    /// <summary>Vapor that flows by itself beside what the machine draws, kg/s.</summary>
    public double Passing;

    /// <summary>Whether states have what was found of a neighbour, and how far the liquid of a blend has changed is taken from there.</summary>
    public bool IsNeighbour;

    public ReducedInputs(double airTemperature, bool isDrawing, AssumedPhase phase = AssumedPhase.FromDensity)
    {
        AirTemperature = airTemperature;
        IsDrawing = isDrawing;
        Phase = phase;
        Passing = 0;
        IsNeighbour = false;
    }
}
