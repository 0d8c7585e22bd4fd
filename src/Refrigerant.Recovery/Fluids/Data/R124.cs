using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-124, 2-chloro-1,1,1,2-tetrafluoroethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R124
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-124",
        Name = "2-chloro-1,1,1,2-tetrafluoroethane",
        CasNumber = "2837-89-0",
        Source = "B. de Vries and R. Tillner-Roth and H.D. Baehr, (1995), Thermodynamic Properties of HCFC 124, 19th "
            + "International Congress of Refrigeration, The Hague, The Netherlands, 582-589",
        MolarMass = 0.1364762,
        GasConstant = 8.314471,
        ReducingTemperature = 395.425,
        ReducingMolarDensity = 4103.279546177282,
        CriticalTemperature = 395.425,
        CriticalPressure = 3624295,
        CriticalMolarDensity = 4103.279546177282,
        AcentricFactor = 0.2880950842214292,
        MinimumTemperature = 75,
        MaximumTemperature = 470,
        MaximumPressure = 40000000,
        IdealGas = new IdealHelmholtz(
            logTau: 2.175638,
            tauLogTau: 0,
            powers: new double[,]
            {
                { -7.389735, -1 },
                { 0.8736831, -2 },
                { -0.1115133, -3 },
            },
            planckEinstein: new double[0, 2]),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { -0.01262962, 1, 2, 0 },
                { 2.168373, 1, 0.5, 0 },
                { -3.330033, 1, 1, 0 },
                { 0.1610361, 2, 0.5, 0 },
                { -9.666145E-05, 2, 2.5, 0 },
                { 0.0119131, 3, -1, 0 },
                { -0.002880217, 5, 1, 0 },
                { 0.001681346, 6, 0, 0 },
                { 1.594968E-05, 8, -0.5, 0 },
                { 0.1289674, 2, 1.5, 1 },
                { 1.182213E-05, 12, 1, 1 },
                { -0.4713997, 1, 2.5, 2 },
                { -0.2412873, 1, -0.25, 2 },
                { 0.6868066, 1, 1, 2 },
                { -0.08621095, 1, 5, 2 },
                { 4.728645E-06, 15, 2, 2 },
                { 0.01487933, 3, 15, 3 },
                { -0.03001338, 3, 20, 3 },
                { 0.001849606, 4, 15, 4 },
                { 0.0004126073, 9, 45, 4 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.0010488, 8.5914E-06 },
            { 217.6, 0.00076478, 9.3198E-06 },
            { 234.19, 0.0005826, 1.0053E-05 },
            { 250.79, 0.00045681, 1.0792E-05 },
            { 267.39, 0.00036518, 1.1538E-05 },
            { 283.98, 0.00029568, 1.2295E-05 },
            { 300.58, 0.00024123, 1.3078E-05 },
            { 317.18, 0.00019749, 1.3917E-05 },
            { 333.77, 0.00016158, 1.4871E-05 },
            { 350.37, 0.00013131, 1.6073E-05 },
            { 366.97, 0.00010488, 1.7872E-05 },
            { 383.56, 7.9845E-05, 2.1616E-05 },
        },
    };
}
