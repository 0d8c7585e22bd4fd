namespace Refrigerant.Recovery.Planning;

/// <summary>An input of a job that is known within a tolerance only.</summary>
public enum UncertainInput
{
    /// <summary>Internal volume of the appliance.</summary>
    InternalVolume = 0,

    /// <summary>Heat exchange of the appliance with its surroundings.</summary>
    HeatExchange,

    /// <summary>The charge.</summary>
    Charge,

    /// <summary>Displacement of the machine.</summary>
    Displacement,

    /// <summary>Temperature of appliance and surroundings.</summary>
    Temperature,

    /// <summary>The gauge on which a pull is ended.</summary>
    Gauge,

    /// <summary>The scale on which a cylinder is filled.</summary>
    Scale,

    /// <summary>Mass of the oil in the appliance.</summary>
    Oil,

    /// <summary>Mass of the metal that cools with the refrigerant.</summary>
    Metal,
}
