// The letters in German. The only way in is german_letters; tested in
// tests/reports/content/letter_words.test.cpp.
#include "reports/content/letter_words.h"

namespace stoneproof::content {

namespace {

constexpr Sentence sentences[] = {
    {Say::letter_for, "Brief an"},
    {Say::about_book, "Zu den Bildern für das Buch „{book}“"},
    {Say::greeting, "Guten Tag {name},"},
    {Say::greeting_no_name, "Guten Tag,"},
    {Say::intro_one,
     "vielen Dank für Ihre Bilder. Bei einem davon brauchen wir Ihre Hilfe, damit es im Buch gut aussieht. "
     "Bitte tun Sie das Eine, das neben dem Bild steht. Bei den anderen ist nichts zu tun."},
    {Say::intro_many, "vielen Dank für Ihre Bilder. Bei {count} davon brauchen wir Ihre Hilfe, damit sie im "
                      "Buch gut aussehen. Bitte tun Sie bei jedem Bild das Eine, das daneben steht. Bei den "
                      "anderen ist nichts zu tun."},
    {Say::dpi,
     "Die Zahl mit „dpi“ ist die Feinheit des Scans: so viele Punkte auf jedem Zoll. Im Scanprogramm heißt "
     "sie Auflösung, dpi oder ppi. Wählen Sie die Zahl, die beim Bild steht, oder die nächsthöhere."},
    {Say::tiff, "TIFF ist eine Art von Datei, die alles behält, was der Scanner gesehen hat. Wenn Ihr "
                "Programm sie nicht anbietet, wählen Sie JPEG mit der besten Qualität."},
    {Say::glance, "Was zu tun ist, auf einen Blick"},
    {Say::glance_more, "Was zu tun ist, Fortsetzung"},
    {Say::details, "Bild für Bild"},
    {Say::must, "Vor dem Druck nötig"},
    {Say::would_help, "Würde das Bild verbessern"},
    {Say::no_picture, "Es gibt noch kein Bild zum Zeigen."},
    {Say::picture_number, "Bild {number}"},
    {Say::your_file, "Ihre Datei: {file}"},
    {Say::on_cover, "Auf dem Umschlag, gedruckt {size}."},
    {Say::on_page, "Auf Seite {page}, gedruckt {size}."},
    {Say::on_pages, "Auf den Seiten {page} und {next}, gedruckt {size}."},
    {Say::also_used, "Auch an {count} weiteren Stellen."},
    {Say::also_used_once, "Auch an einer weiteren Stelle."},
    {Say::size, "{width} × {height} cm"},
    {Say::setting, "{ppi} dpi"},
    {Say::short_scan, "Neu scannen"},
    {Say::short_scan_film, "Als Film neu scannen"},
    {Say::short_scan_by_service, "Neu scannen lassen"},
    {Say::short_photograph, "Neu fotografieren"},
    {Say::short_measure, "Original ausmessen"},
    {Say::short_send_file, "Bild schicken"},
    {Say::short_send_again, "Datei noch einmal schicken"},
    {Say::short_first_file, "Originaldatei schicken"},
    {Say::short_save_as_tiff, "Als TIFF speichern"},
    {Say::short_own_file, "Dieses Bild einzeln schicken"},
    {Say::short_find_better, "Bessere Fassung suchen"},
    {Say::do_scan, "Scannen Sie {original} noch einmal mit {setting} und speichern Sie das Bild als TIFF."},
    {Say::do_scan_film, "Scannen Sie {original} noch einmal mit {setting} auf einem Filmscanner, oder lassen "
                        "Sie das im Fotogeschäft machen."},
    {Say::do_scan_by_service,
     "Lassen Sie {original} noch einmal mit {setting} scannen, im Fotogeschäft oder bei einem Scan-Dienst."},
    {Say::do_photograph,
     "Fotografieren Sie den Gegenstand noch einmal, so nah und so groß, wie er ins Bild passt."},
    {Say::do_measure,
     "Messen Sie {original} mit einem Lineal und schreiben Sie Breite und Höhe auf den Antwortzettel."},
    {Say::do_send_file, "Schicken Sie uns dieses Bild: uns fehlt die Datei."},
    {Say::do_send_again, "Schicken Sie diese Datei noch einmal, direkt von Ihrem Computer oder Telefon."},
    {Say::do_first_file,
     "Schicken Sie die Originaldatei vom Telefon oder von der Kamera, nicht die aus einer Nachricht."},
    {Say::do_save_as_tiff,
     "Öffnen Sie das Bild, speichern Sie es als TIFF und schicken Sie uns die neue Datei."},
    {Say::do_own_file, "Speichern Sie das gemeinte Bild als eigene Datei und schicken Sie uns diese."},
    {Say::do_find_better,
     "Suchen Sie eine bessere Fassung: eine größere Datei, einen anderen Abzug oder das Negativ."},
    {Say::the_print, "den Papierabzug"},
    {Say::the_slide, "das Dia"},
    {Say::the_negative, "das Negativ"},
    {Say::the_document, "das Schriftstück"},
    {Say::the_clipping, "den Zeitungsausschnitt"},
    {Say::the_object, "den Gegenstand"},
    {Say::why_missing_picture,
     "Im Buch ist Platz für dieses Bild, aber die Datei ist nie bei uns angekommen."},
    {Say::why_unreadable_picture, "Die Datei wurde unterwegs beschädigt und lässt sich nicht öffnen."},
    {Say::why_nearly_blank,
     "Auf der Datei, die ankam, ist fast nichts zu sehen; vielleicht ist es die falsche."},
    {Say::why_too_few_pixels,
     "In der Größe, in der das Buch es zeigt, würde diese Datei unscharf oder zackig aussehen."},
    {Say::why_lost_original_too_small,
     "In der Größe, in der das Buch es zeigt, würde diese Datei unscharf oder zackig aussehen."},
    {Say::why_enlarged_in_software,
     "Ein Programm hat diese Datei größer gemacht, als der Scan war; schärfer wird sie davon nicht."},
    {Say::why_saved_before,
     "Die Datei wurde einmal sehr klein gespeichert; die feinen Teile des Bildes sind verloren."},
    {Say::why_coarse_jpeg,
     "Die Datei wurde sehr klein gespeichert; auf Papier sieht man davon kleine Kästchen."},
    {Say::why_printed_screen,
     "Das Bild stammt aus etwas Gedrucktem; dessen Druckpunkte würden hässliche Muster ergeben."},
    {Say::why_clipped_highlights,
     "Die hellen Teile sind leeres Weiß geworden, oft weil das Scanprogramm von selbst korrigiert hat."},
    {Say::why_clipped_shadows, "Die dunklen Teile sind ein einziger schwarzer Fleck geworden, oft weil das "
                               "Scanprogramm von selbst korrigiert hat."},
    {Say::why_combed_tones,
     "Hell und Dunkel wurden nachträglich stark verändert; Himmel und Gesichter können streifig werden."},
    {Say::why_soft_detail, "Das Bild ist weniger scharf, als es für seine Größe im Buch sein sollte."},
    {Say::why_tilted_original, "Das Bild lag schief auf dem Glas."},
    {Say::why_dirty_glass, "Flecken auf dem Glas des Scanners sind mit ins Bild gekommen."},
    {Say::why_screenshot, "Das ist ein Abbild eines Bildschirms und viel gröber als das Bild selbst."},
    {Say::why_several_pictures, "Ihre Datei enthält mehrere Bilder, und das Buch kann nur das erste zeigen."},
    {Say::why_unaccepted_file, "Die Druckerei kann diese Art von Datei nicht verwenden."},
    {Say::how_straight_flat, "Legen Sie das Original flach auf das saubere Glas."},
    {Say::how_no_enlarging,
     "Lassen Sie die Größe bei 100 % und wählen Sie nichts, was „interpoliert“ oder „verbessert“ heißt."},
    {Say::how_no_correction, "Schalten Sie im Scanprogramm die automatische Korrektur aus."},
    {Say::how_descreen, "Schalten Sie im Scanprogramm „Entrastern“ ein: Das nimmt die Druckpunkte heraus."},
    {Say::how_straight, "Legen Sie das Original gerade an den Rand des Glases."},
    {Say::how_pixels, "Das Foto sollte mindestens {width} × {height} Bildpunkte (Pixel) haben: Die Kamera "
                      "zeigt das unter „Bildgröße“."},
    {Say::how_phone,
     "Am Telefon: als Datei oder „in voller Größe“ teilen; Nachrichtenprogramme verkleinern Bilder."},
    {Say::how_after_measuring, "Wir nennen Ihnen dann die Einstellung für den Scanner."},
    {Say::how_clean, "Reinigen Sie zuerst das Glas."},
    {Say::else_lost,
     "Wenn Sie das Original nicht mehr haben: Schicken Sie uns die größte Datei, die Sie davon finden."},
    {Say::else_lost_size, "Wenn Sie das Original nicht mehr haben: Schicken Sie uns die größte Datei, die "
                          "Sie finden, sonst drucken wir das Bild höchstens {size} groß."},
    {Say::else_not_found, "Wenn Sie keine finden, sagen Sie es uns auf dem Antwortzettel: Dann drucken wir "
                          "das Bild kleiner oder lassen es weg."},
    {Say::else_not_found_size, "Wenn Sie keine finden, drucken wir das Bild höchstens {size} groß."},
    {Say::else_scan, "Wenn Sie die Datei nicht haben: Scannen Sie {original} mit {setting}."},
    {Say::else_no_file, "Wenn Sie die Datei nicht haben: Sagen Sie es uns auf dem Antwortzettel."},
    {Say::else_help, "Wenn das nicht geht: Sagen Sie es uns auf dem Antwortzettel."},
    {Say::glass_heading, "Bitte reinigen Sie zuerst das Glas Ihres Scanners"},
    {Say::glass_sentence,
     "Auf mehreren Ihrer Bilder sind an denselben Stellen Flecken; sie liegen also auf dem Glas. Die "
     "Zeichnung zeigt das Glas, wie Sie von oben darauf sehen: Rechts oben ist die Ecke, an der ein Scan "
     "beginnt; viele Scanner haben dort einen Pfeil. Wischen Sie das Glas mit einem weichen trockenen Tuch "
     "ab und scannen Sie danach noch einmal: {pictures}."},
    {Say::glass_plain,
     "Auf mehreren Ihrer Bilder sind an denselben Stellen Flecken; sie liegen also auf dem Glas. Wischen Sie "
     "es mit einem weichen trockenen Tuch ab und scannen Sie danach noch einmal: {pictures}."},
    {Say::glass_only, "vielen Dank für Ihre Bilder. Um eines möchten wir Sie bitten."},
    {Say::check_heading, "Bevor Sie scannen"},
    {Say::check_clean, "Wischen Sie das Glas mit einem weichen trockenen Tuch ab und nehmen Sie Staub mit "
                       "einem weichen Pinsel vom Bild. Nichts Nasses."},
    {Say::check_setting, "Stellen Sie die Zahl aus diesem Brief ein und lassen Sie die Größe bei 100 %. Sie "
                         "ist für die Größe im Buch berechnet."},
    {Say::check_whole, "Scannen Sie das ganze Bild, gerade und in Farbe, auch wenn es schwarz-weiß ist."},
    {Say::check_auto, "Schalten Sie im Zweifel automatische Korrekturen und Schärfen aus."},
    {Say::check_save, "Speichern Sie als TIFF oder als JPEG mit der besten Qualität."},
    {Say::check_send, "Schicken Sie die Datei selbst, auf einem Stick oder als Anhang. Nachrichten am "
                      "Telefon verkleinern Bilder."},
    {Say::check_film, "Dias und Negative brauchen einen Scanner mit Filmhalter. Wenn Sie keinen haben, hilft "
                      "das Fotogeschäft."},
    {Say::check_fragile, "Drücken Sie nichts Zerrissenes, Gewelltes, Bröckelndes oder am Glas Klebendes an. "
                         "Fragen Sie zuerst eine Restauratorin oder einen Restaurator."},
    {Say::slip_heading, "Antwortzettel"},
    {Say::slip_return, "Bitte ausfüllen und an die Person zurückgeben, von der Sie diesen Brief haben."},
    {Say::slip_from, "Von: {name}"},
    {Say::slip_sent, "Ich schicke neue Dateien der Bilder Nummer"},
    {Say::slip_lost, "Ich habe die Originale nicht mehr von den Bildern Nummer"},
    {Say::slip_measure, "Bild Nummer ____ ist ______ cm breit und ______ cm hoch"},
    {Say::slip_help, "Ich hätte gern Hilfe. Bitte rufen Sie mich an:"},
    {Say::slip_sign, "Datum und Unterschrift"},
    {Say::decimal, ","},
    {Say::and_join, "und"},
};

} // namespace

const LetterLanguage german_letters = {"de", sentences};

} // namespace stoneproof::content
