namespace Refrigerant.Recovery.Samples.Controller;

/// <summary>What the sensors show at a tick; not a number where one shows nothing.</summary>
/// <param name="Seconds">Time since the start.</param>
/// <param name="SuctionPascals">Absolute pressure in the appliance.</param>
/// <param name="DischargePascals">Absolute pressure at the machine's outlet.</param>
/// <param name="CylinderKilograms">Content of the cylinder: the scale less the tare weight.</param>
internal readonly record struct Readings(double Seconds, double SuctionPascals, double DischargePascals, double CylinderKilograms);
