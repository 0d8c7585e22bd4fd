using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-1270, propene. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R1270
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-1270",
        Name = "propene",
        CasNumber = "115-07-1",
        Source = "E.W. Lemmon and U. Overhoff and M.O. McLinden and W. Wagner, (2010), Equation of state for propylene",
        MolarMass = 0.04207974,
        GasConstant = 8.314472,
        ReducingTemperature = 364.211,
        ReducingMolarDensity = 5457,
        CriticalTemperature = 364.211,
        CriticalPressure = 4555000,
        CriticalMolarDensity = 5457,
        AcentricFactor = 0.146,
        MinimumTemperature = 87.953,
        MaximumTemperature = 575,
        MaximumPressure = 1000000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 1.544, 0.8895942187358427 },
                { 4.013, 2.671528317376466 },
                { 8.923, 5.304617378387802 },
                { 6.02, 11.85301926630442 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.04341002, 4, 1, 0 },
                { 1.136592, 1, 0.205, 0 },
                { -0.8528611, 1, 0.56, 0 },
                { 0.5216669, 2, 0.676, 0 },
                { -1.382953, 2, 1, 0 },
                { 0.1214347, 3, 0.5, 0 },
                { -0.5984662, 1, 1, 1 },
                { -1.391883, 1, 1.94, 2 },
                { -1.008434, 3, 2, 2 },
                { 0.1961249, 2, 1, 1 },
                { -0.360693, 2, 2.66, 2 },
                { -0.002407175, 8, 0.83, 1 },
            },
            Gaussian = new double[,]
            {
                { 0.7432121, 1, 1.6, 1.07, 0.77, 1.21, 0.78 },
                { 0.1475162, 1, 2.5, 0.66, 0.83, 1.08, 0.82 },
                { -0.02503391, 2, 3, 1.2, 0.607, 0.83, 1.94 },
                { -0.2734409, 3, 2.5, 1.12, 0.4, 0.56, 0.69 },
                { 0.006378889, 3, 2.72, 1.47, 0.66, 1.22, 1.96 },
                { 0.0150294, 2, 4, 1.93, 0.07, 1.81, 1.3 },
                { -0.03162971, 1, 4, 3.3, 3.1, 1.54, 0.38 },
                { -0.04107194, 2, 1, 15.4, 387, 1.12, 0.91 },
                { -1.190241, 3, 4, 6, 41, 1.4, 0.7 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00026279, 5.6788E-06 },
            { 214.84, 0.00022128, 6.0596E-06 },
            { 228.69, 0.0001888, 6.4414E-06 },
            { 242.53, 0.0001628, 6.8326E-06 },
            { 256.38, 0.0001415, 7.2482E-06 },
            { 270.22, 0.00012371, 7.7096E-06 },
            { 284.06, 0.00010853, 8.2448E-06 },
            { 297.91, 9.526E-05, 8.8901E-06 },
            { 311.75, 8.3337E-05, 9.7016E-06 },
            { 325.6, 7.2209E-05, 1.0785E-05 },
            { 339.44, 6.1242E-05, 1.2363E-05 },
            { 353.28, 4.9104E-05, 1.5121E-05 },
        },
    };
}
