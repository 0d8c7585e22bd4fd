namespace Refrigerant.Recovery.Records;

/// <summary>What refrigerant is sent away for.</summary>
public enum ShipmentPurpose
{
    /// <summary>Reclamation.</summary>
    Reclamation = 0,

    /// <summary>Destruction.</summary>
    Destruction,
}
